using RebuildApi.Contracts;
using RebuildApi.PluginHost;

// With "plugin-worker" it is a worker, with "odd-worker" one that answers oddly; else a service that asks one hook of one family and waits to be ended: <folder> <family> <hook> <mark>.
if (args is ["plugin-worker", ..])
    return PluginWorker.RunProcess();
if (args is ["odd-worker", var oddity, var number, ..])
    return Service.OddWorker.Run(oddity, int.Parse(number, System.Globalization.CultureInfo.InvariantCulture));

var options = PluginHostOptions.Beside(AppContext.BaseDirectory, args[0], _ => []) with
{
    Worker = WorkerCommand.Of(typeof(Program).Assembly, "plugin-worker", args[3]),
    DeclareBudget = TimeSpan.FromMinutes(1),
    LongestHookBudget = TimeSpan.FromMinutes(5),
};
using var catalog = PluginCatalog.Open(options);
var family = catalog.Find(args[1])!.Family;
var snapshot = new UnitSnapshot("unit-1", family.Version, [], [], [], [], [], [], [], Policy.Default);
Console.WriteLine("asking");
catalog.RunHook(args[1], family.Hooks.Single(h => h.Id == args[2]), snapshot);
Console.WriteLine("answered");
Console.ReadLine();
return 0;
