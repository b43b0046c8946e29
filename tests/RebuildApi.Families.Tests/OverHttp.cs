using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>
/// Judges a unit by the service: everything the benches know is posted over HTTP, and every answer that comes back must be the engine's own.
/// </summary>
internal static class OverHttp
{
    private static readonly Lazy<ShopOverHttp> Shop = new(() => new ShopOverHttp());

    /// <summary>Posts the unit and gives its id there.</summary>
    public static Task<string> Sent(Bench bench) => Shop.Value.Sent(bench);

    /// <summary>What is answered when the unit is planned.</summary>
    public static Task<JsonNode> Planned(string unit, string request) => Shop.Value.Planned(unit, request);

    /// <summary>Posts so many readings alike of one dimension, without naming an instrument.</summary>
    public static Task Read(string unit, string at, int readings, JsonNode value) => Shop.Value.Read(unit, at, readings, value);

    /// <summary>Posts the unit, reads the answers, holds them against the engine's, and gives the engine's.</summary>
    public static Judgement JudgeOverHttp(this Bench bench)
    {
        var here = bench.Judge();
        Shop.Value.Same(bench, here).GetAwaiter().GetResult();
        return here;
    }
}

/// <summary>The service in memory, one for all situations; each situation is a unit of its own.</summary>
internal sealed class ShopOverHttp
{
    private readonly HttpClient _http;
    private int _units;

    public ShopOverHttp()
    {
        var folder = Directory.CreateTempSubdirectory("rebuild-situations-").FullName;
        _http = new WebApplicationFactory<Program>().WithWebHostBuilder(b =>
        {
            b.UseSetting("Rebuild:DataFolder", folder);
            b.UseSetting("Rebuild:Access", "this-machine");
            b.UseSetting("Logging:LogLevel:Default", "Warning");
        }).CreateClient();
        foreach (var gauge in Gauges.All.Where(g => UnitOf(g.Resolution.Kind) is not null))
            Post("/v1/instruments", GaugeBody(gauge)).GetAwaiter().GetResult();
    }

    public async Task<string> Sent(Bench bench)
    {
        var unit = "u" + Interlocked.Increment(ref _units).ToString(CultureInfo.InvariantCulture);
        await Send(bench, unit);
        return unit;
    }

    public async Task<JsonNode> Planned(string unit, string request)
    {
        using var content = new StringContent(request, Encoding.UTF8, "application/json");
        using var answer = await _http.PostAsync($"/v1/units/{unit}/plans", content);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, text);
        return JsonNode.Parse(text)!;
    }

    public Task Read(string unit, string at, int readings, JsonNode value) => PostAll(
        $"/v1/units/{unit}/measurements", "measurements",
        [new JsonObject { ["at"] = at, ["readings"] = new JsonArray([.. Enumerable.Range(0, readings).Select(_ => value.DeepClone())]) }]);

    public async Task Same(Bench bench, Judgement here)
    {
        var unit = await Sent(bench);
        Equal(here.Parts.Select(p => $"{Subjects.Of(p.Position, p.Index)} {Kebab(p.Outcome)} {Kebab(p.Disposition)}"),
            (await Items(unit, "verdicts")).Select(p => $"{p["subject"]} {p["outcome"]} {p["disposition"]}"));
        Equal(here.Clearances.Select(c => $"{c.Verdict.Subject} {Kebab(c.Verdict.Outcome)} {(c.Ring is { } r ? Kebab(r.Outcome) : "")}"),
            (await Items(unit, "clearances")).Select(c => $"{c["clearance"]} {c["outcome"]} {c["ring"]?["outcome"]}"));
        Equal(here.Pairings.Select(p => $"{p.Rule} {Kebab(p.Outcome)} {string.Join(",", p.Reasons.Select(r => r.Code))}"),
            (await Items(unit, "pairings")).Select(p => $"{p["pairing"]} {p["outcome"]} {string.Join(",", p["reasons"]!.AsArray().Select(r => r!["code"]))}"));
    }

    private async Task Send(Bench bench, string unit)
    {
        var s = bench.Snapshot;
        var complaint = new JsonArray([.. s.Complaint.Select(c => new JsonObject { ["symptom"] = c.Symptom, ["gear"] = c.Gear })]);
        await Post("/v1/units", new JsonObject { ["id"] = unit, ["tag"] = unit, ["family"] = s.Family.Id, ["person"] = SoundUnit.Person, ["complaint"] = complaint });
        foreach (var placement in s.Placements)
            await Post($"/v1/units/{unit}/components", PlacementBody(placement, s.Components.Single(c => c.Id == placement.Component), unit));
        var here = s.Placements.Select(p => p.Component).ToHashSet();
        await PostAll($"/v1/units/{unit}/findings", "findings", s.Findings.Where(f => here.Contains(f.Component)).Select(f => FindingBody(f, unit)));
        await PostAll(
            $"/v1/units/{unit}/measurements", "measurements", s.Measurements.Where(m => here.Contains(m.Component)).Select(m => MeasurementBody(m, unit)));
        foreach (var trial in s.Trials)
            await Post($"/v1/units/{unit}/trials", TrialBody(trial));
    }

    private static JsonObject GaugeBody(InstrumentState gauge) => new()
    {
        ["id"] = gauge.Id,
        ["name"] = gauge.Id,
        ["type"] = gauge.Type,
        ["resolution"] = Quantity(gauge.Resolution),
        ["limitOfError"] = Quantity(gauge.LimitOfError!),
    };

    private static JsonObject PlacementBody(Placement placement, Component part, string unit) => new()
    {
        ["id"] = IdOf(part.Id, unit),
        ["position"] = Subjects.Of(placement),
        ["role"] = Kebab(placement.Role),
        ["origin"] = Kebab(part.Origin),
        ["attributes"] = new JsonObject([.. part.Attributes.Select(a => KeyValuePair.Create(a.Key, (JsonNode?)a.Value))]),
        ["facing"] = Kebab(placement.Facing),
        ["indexMark"] = placement.IndexMark,
    };

    private static JsonObject FindingBody(Finding finding, string unit)
    {
        var body = new JsonObject { ["component"] = IdOf(finding.Component, unit), ["time"] = Time(finding.Taken.At) };
        if (finding.Observation is DamageSeen damage)
            body["damage"] = new JsonObject { ["class"] = damage.Class, ["extent"] = damage.Extent, ["place"] = damage.Place };
        else if (finding.Observation is AttributeSeen attribute)
            body["attribute"] = new JsonObject { ["id"] = attribute.Attribute, ["value"] = attribute.Value };
        else
            body["sound"] = true;
        return body;
    }

    private static JsonObject MeasurementBody(Measurement measurement, string unit) => new()
    {
        ["component"] = IdOf(measurement.Component, unit),
        ["characteristic"] = measurement.Characteristic,
        ["instrument"] = measurement.Taken.Instrument,
        ["readings"] = new JsonArray([.. measurement.Readings.Select(r => ReadingBody(r, measurement.Taken.Instrument))]),
        ["time"] = Time(measurement.Taken.At),
    };

    private static JsonObject TrialBody(TrialAssembly trial) => new()
    {
        ["clearance"] = trial.Loop,
        ["instrument"] = trial.Taken.Instrument,
        ["pieces"] = new JsonArray([.. trial.Pieces.Select(p => new JsonObject { ["member"] = p.Member, ["position"] = p.Position })]),
        ["readings"] = new JsonArray([.. trial.Gap.Select(r => ReadingBody(r, trial.Taken.Instrument))]),
        ["person"] = SoundUnit.Person,
        ["bench"] = "bench-1",
    };

    private static JsonObject ReadingBody(Reading reading, string? instrument) => reading switch
    {
        { AsSent: "tight" } => new JsonObject { ["tight"] = true },
        { Si: not null } => new JsonObject { ["value"] = Number(reading.AsSent), ["unit"] = UnitOf(DimensionOf(instrument)) },
        _ => new JsonObject { ["value"] = Number(reading.AsSent), ["unit"] = reading.Unit },
    };

    private static Dimension DimensionOf(string? instrument) =>
        Enum.GetValues<Dimension>().Where(d => Gauges.For(d) == instrument).DefaultIfEmpty(Dimension.Count).First();

    private static string? UnitOf(Dimension dimension) => dimension switch
    {
        Dimension.Length => "mm",
        Dimension.Angle => "rad",
        Dimension.Force => "N",
        Dimension.Torque => "N·m",
        Dimension.Hardness => "HV",
        Dimension.Count => "count",
        _ => null,
    };

    private static JsonObject Quantity(Quantity quantity) => quantity is Exact exact
        ? new JsonObject { ["value"] = exact.Value.InMillimetres, ["unit"] = "mm" }
        : new JsonObject { ["value"] = Number(quantity.InSi.ToString("R", CultureInfo.InvariantCulture)), ["unit"] = UnitOf(quantity.Kind) };

    private static JsonNode Number(string text) => JsonNode.Parse(text)!;

    private static string Time(DateTimeOffset at) => at.ToString("O", CultureInfo.InvariantCulture);

    private static string IdOf(string component, string unit) => $"{unit}-{component}";

    private static string Kebab<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    private static void Equal(IEnumerable<string> here, IEnumerable<string> there) =>
        Assert.Equal(string.Join('\n', here.Order(StringComparer.Ordinal)), string.Join('\n', there.Order(StringComparer.Ordinal)));

    private async Task<JsonNode[]> Items(string unit, string what)
    {
        using var answer = await _http.GetAsync($"/v1/units/{unit}/{what}?limit=1000");
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, text);
        return [.. JsonNode.Parse(text)!["items"]!.AsArray()!];
    }

    private Task PostAll(string path, string list, IEnumerable<JsonObject> entries)
    {
        var all = new JsonArray([.. entries]);
        return all.Count == 0 ? Task.CompletedTask : Post(path, new JsonObject { [list] = all, ["person"] = SoundUnit.Person, ["bench"] = "bench-1" });
    }

    private async Task Post(string path, JsonObject body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new StringContent(body.ToJsonString(), Encoding.UTF8, "application/json") };
        request.Headers.Add("Idempotency-Key", Guid.CreateVersion7().ToString());
        using var answer = await _http.SendAsync(request);
        Assert.True(answer.IsSuccessStatusCode, $"{path}: {await answer.Content.ReadAsStringAsync()}");
    }
}
