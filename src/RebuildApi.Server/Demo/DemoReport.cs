using System.Text.Json;

namespace RebuildApi.Server.Demo;

/// <summary>Prints the answers about the demo unit, assembly by assembly, as a rebuilder would read them.</summary>
public sealed class DemoReport(HttpClient http, TextWriter output)
{
    private const string Everything = "?limit=1000";

    /// <summary>Prints everything about a unit.</summary>
    public async Task Print(string unit)
    {
        using var verdicts = await Get($"/v1/units/{unit}/verdicts{Everything}");
        using var clearances = await Get($"/v1/units/{unit}/clearances{Everything}");
        using var pairings = await Get($"/v1/units/{unit}/pairings{Everything}");
        using var neighbourhoods = await Get($"/v1/units/{unit}/neighbourhoods{Everything}");
        var report = new ReportText(output);
        await PrintDiagnosis(unit, report);
        foreach (var group in Items(verdicts).Select(GroupOf).Distinct())
        {
            report.Heading(group);
            report.Parts([.. Items(verdicts).Where(p => GroupOf(p) == group)]);
            report.Clearances([.. Items(clearances).Where(c => GroupOf(c) == group)]);
        }

        report.Heading("may these parts run together");
        report.Pairings([.. Items(pairings)]);
        report.Heading("each sleeve with all the gears that it serves");
        report.Neighbourhoods([.. Items(neighbourhoods)]);
        report.Heading("the complaint");
        report.Complaint(Entries(verdicts, "complaint"));
        report.Heading("still missing");
        report.Missing(Entries(verdicts, "missing"));
        report.Heading("what keeps the unit from going on");
        report.Blocks(Entries(verdicts, "blocks"));
        report.Heading("where it is, and what its next gate asks for");
        using var stages = await Get($"/v1/units/{unit}/stages");
        report.Gate(stages.RootElement);
        report.Heading("cautions");
        report.Cautions(Entries(verdicts, "cautions"));
    }

    // What could be said from the owner's words alone, and what it came to once the box was apart.
    private async Task PrintDiagnosis(string unit, ReportText report)
    {
        using var taken = await Get($"/v1/units/{unit}");
        var family = taken.RootElement.GetProperty("family").GetProperty("id").GetString();
        var said = JsonSerializer.Serialize(new { complaint = taken.RootElement.GetProperty("complaint"), checks = 500 });
        using var content = new StringContent(said, System.Text.Encoding.UTF8, "application/json");
        using var answer = await http.PostAsync($"/v1/families/{family}/diagnoses", content);
        using var before = await JsonDocument.ParseAsync(await answer.Content.ReadAsStreamAsync());
        using var after = await Get($"/v1/units/{unit}/diagnosis");
        report.Heading("the complaint, before strip-down");
        report.Causes(Entries(before, "causes").Take(5));
        report.NextCheck(Entries(before, "checks"));
        report.Heading("what the teardown made of it");
        report.CausesWithReasons(Entries(after, "causes").Where(IsLikely).Where(ExplainsComplaint).Take(4));
    }

    private static bool IsLikely(JsonElement cause) => cause.GetProperty("probability").GetDouble() > 0.5;

    private static bool ExplainsComplaint(JsonElement cause) => cause.GetProperty("weights").EnumerateArray()
        .Any(w => w.GetProperty("clue").GetString()!.StartsWith("symptom:", StringComparison.Ordinal) && w.GetProperty("logOdds").GetDouble() > 0);

    private async Task<JsonDocument> Get(string path) => await JsonDocument.ParseAsync(await http.GetStreamAsync(path));

    private static IEnumerable<JsonElement> Items(JsonDocument answer) => Entries(answer, "items");

    private static IEnumerable<JsonElement> Entries(JsonDocument answer, string name) => answer.RootElement.GetProperty(name).EnumerateArray();

    private static string GroupOf(JsonElement item) => item.GetProperty("group").GetString()!;
}
