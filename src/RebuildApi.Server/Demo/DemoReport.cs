namespace RebuildApi.Server.Demo;

/// <summary>Prints the answers about the demo unit, group by group, as a rebuilder would read them.</summary>
public sealed class DemoReport(HttpClient http, TextWriter output)
{
    /// <summary>Prints everything about a unit.</summary>
    public async Task Print(string unit) => await output.WriteLineAsync(await http.GetStringAsync($"/v1/units/{unit}"));
}
