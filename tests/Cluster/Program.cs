using System.Globalization;
using RebuildApi.Cluster;

// proxy LISTEN COPY...                      spreads requests over the copies
// load ADDRESS SECONDS BENCHES [NAME]       writes readings, counts, and looks whether each acknowledged one is there
return args switch
{
    ["proxy", var listen, .. var copies] when copies.Length > 0 => await Proxy.Run(listen, copies),
    ["load", var address, var seconds, var benches, .. var name] => await Load.Run(
        new Uri(address), TimeSpan.FromSeconds(int.Parse(seconds, CultureInfo.InvariantCulture)), int.Parse(benches, CultureInfo.InvariantCulture), name.FirstOrDefault() ?? "load"),
    _ => Wrong(),
};

static int Wrong()
{
    Console.Error.WriteLine("proxy LISTEN COPY... | load ADDRESS SECONDS BENCHES [NAME]");
    return 2;
}
