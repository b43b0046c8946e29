using System.Linq;
using System.Net.Http;
using System.Threading.Tasks;

namespace Rebuild.Generated;

/// <summary>A short day at a bench, with the types that the generator made.</summary>
public static class Bench
{
    public static async Task<string> Day(HttpClient http)
    {
        var client = new RebuildClient(http.BaseAddress!.ToString(), http);
        var family = (await client.ListFamiliesAsync()).Items.Single(f => f.Id == "brackenmere-4");
        var unit = await client.OpenUnitAsync(body: new UnitRequest { Id = "sl-3001", Tag = "T-3001", Family = family.Id, Person = "Ada" });
        var readings = new MeasurementBatchRequest
        {
            Person = "Ada",
            Bench = "bench-1",
            Measurements = [new MeasurementRequest { At = "third-gear/length", Readings = [.. Enumerable.Range(0, 4).Select(_ => new ReadingRequest { Value = 1.5101, Unit = "in" })] }],
        };
        await client.AddMeasurementsAsync(unit.Id, idempotency_Key: "day-1", body: readings);
        var verdicts = await client.GetVerdictsAsync(unit.Id);
        return verdicts.Items.Single(p => p.Subject == "third-gear").Verdicts.Single(v => v.Subject == "third-gear/length").Outcome.ToString();
    }

    public static async Task<string> Mistake(HttpClient http)
    {
        var client = new RebuildClient(http.BaseAddress!.ToString(), http);
        try
        {
            await client.GetUnitAsync("nobody");
            return "nothing";
        }
        catch (ApiException<ProblemDocument> problem)
        {
            return problem.StatusCode + " " + problem.Result.Code;
        }
    }
}
