using System.Globalization;
using System.Text.Json.Nodes;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Planning;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>
/// Where there is no plan, one reading may open the way: the range that is named is held against the unit with its ends, and with what lies just outside, put
/// on it. Computed here, no source.
/// </summary>
public sealed class MeasuredUnlockTests
{
    private static readonly Length s_step = Length.Micrometres(1);

    /// <summary>Third gear but for its bore is good, and nothing is to go back that is not proven good.</summary>
    private static Bench WithoutItsBore { get; } = Healthy.Brackenmere.Unread("third-gear/bore");

    private static PlanRequest OnlyProven { get; } = new() { Limits = new PlanLimits { AcceptOpen = false }, Cuts = Engine.Selection.CutUse.Never };

    [Fact]
    public void A_dimension_that_nobody_has_read_opens_the_way_within_its_limits_and_not_beside_them()
    {
        var unlock = Reading(Plan(WithoutItsBore, OnlyProven), "third-gear/bore");

        var reading = unlock.Reading!;
        Assert.Equal((UnlockKind.Measurement, 3, s_step, null), (unlock.What, reading.Readings, reading.Step, reading.Chance));
        var limits = Healthy.Brackenmere.Family.Kinds.Single(k => k.Id == "third-gear").Characteristics.Single(c => c.Id == "bore").Service!;
        Assert.True(limits.Contains(reading.Low) && limits.Contains(reading.High));
        Ends(WithoutItsBore, OnlyProven, "third-gear/bore", reading);
    }

    /// <summary>
    /// The hub is 1.0700 in and the gear 1.5031 in wide: with the seat as drawn at 2.6700 in the thinnest ring of 0.0870 in leaves 0.0099 in, less than the 0.010 in of the
    /// window. The ring may be off by 0.0005 in, so 1.645 × 0.0005 in ÷ √3 = 0.00047 in more are wanted for 95 %: a seat of 2.67058 in or more, and it may be 2.6720 in.
    /// </summary>
    [Fact]
    public void A_dimension_that_stands_on_its_drawing_opens_the_way_where_a_clearance_would_come_right()
    {
        var tight = Healthy.Brackenmere.ReadsInches("hub-3-4/width", [.. Enumerable.Repeat(1.0700m, 4)])
            .ReadsInches("third-gear/length", [.. Enumerable.Repeat(1.5031m, 4)]).Unread("mainshaft/third-seat");
        var request = new PlanRequest { Cuts = Engine.Selection.CutUse.Never };

        var answer = Plan(tight, request);

        Assert.Contains(Assert.Single(answer.Conflicts).Demands, d => d.Id == "third-end-play");
        var reading = Reading(answer, "mainshaft/third-seat").Reading!;
        Assert.InRange(reading.Low.InInches, 2.6705m, 2.6706m);
        // A reading that is beyond the limit by less than its doubt leaves a plan on the condition that it is read better.
        Assert.InRange(reading.High.InInches, 2.6720m, 2.6721m);
        // Drawn anywhere from 2.6690 to 2.6710 in with equal chance: a fifth of that lies above 2.67058 in.
        Assert.InRange(reading.Chance!.Value, 0.20, 0.22);
        Ends(tight, request, "mainshaft/third-seat", reading);
    }

    [Fact]
    public void What_is_read_and_bad_or_would_not_help_is_not_named()
    {
        var worn = Healthy.Brackenmere.ReadsInches("third-gear/bore", [.. Enumerable.Repeat(1.8800m, 9)]).Unread("hub-3-4/width");

        var answer = Plan(worn, OnlyProven);

        Assert.Equal(SolveStatus.Impossible, answer.Status);
        Assert.DoesNotContain(answer.Unlocks, u => u.Reading is not null);
    }

    [Fact]
    public async Task Over_HTTP_the_reading_at_either_end_makes_a_plan_and_the_one_beside_it_does_not()
    {
        const string Request = """{ "person": "Wren", "acceptOpen": false, "cuts": "never" }""";
        var none = await OverHttp.Planned(await OverHttp.Sent(WithoutItsBore), Request);

        Assert.Equal("impossible", (string)none["status"]!);
        var unlock = none["unlocks"]!.AsArray().Single(u => u!["reading"] is not null)!;
        Assert.Equal(("measurement", "third-gear/bore"), ((string)unlock["what"]!, (string)unlock["subject"]!));
        Assert.Contains("may also turn out otherwise", (string)unlock["text"]!, StringComparison.Ordinal);
        var reading = unlock["reading"]!;
        foreach (var (end, inches, outwards) in new[] { ("low", "lowInches", -0.001m), ("high", "highInches", 0.001m) })
        {
            var value = (decimal)reading[end]!["value"]!;
            Assert.Equal(value / 25.4m, (decimal)reading[inches]!["value"]!, 6);
            Assert.Equal("proven", await StatusWith(reading, value));
            Assert.Equal("impossible", await StatusWith(reading, value + outwards));
        }

        static async Task<string> StatusWith(JsonNode reading, decimal millimetres)
        {
            var unit = await OverHttp.Sent(WithoutItsBore);
            await OverHttp.Read(unit, (string)reading["at"]!, (int)reading["readings"]!,
                JsonNode.Parse($$"""{ "value": {{millimetres.ToString("0.000", CultureInfo.InvariantCulture)}}, "unit": "mm" }""")!);
            return (string)(await OverHttp.Planned(unit, Request))["status"]!;
        }
    }

    private static PlanUnlock Reading(PlanAnswer answer, string at)
    {
        Assert.Equal(SolveStatus.Impossible, answer.Status);
        return answer.Unlocks.Single(u => u.Reading is not null && u.Subject == at);
    }

    private static void Ends(Bench bench, PlanRequest request, string at, UnlockReading reading)
    {
        Assert.NotNull(With(reading.Low).Plan);
        Assert.NotNull(With(reading.High).Plan);
        Assert.Null(With(reading.Low - s_step).Plan);
        Assert.Null(With(reading.High + s_step).Plan);

        PlanAnswer With(Length value)
        {
            var read = Contracts.Reading.Of(value, value.InMillimetres.ToString("0.000", CultureInfo.InvariantCulture), "mm");
            var (position, characteristic) = (at.Split('/')[0], at.Split('/')[1]);
            var taken = new Taken(null, null, SoundUnit.Person, "bench-1", SnapshotBuilder.Noon, null);
            var measured = new Measurement("read-now", position, 1, characteristic, [.. Enumerable.Repeat(read, reading.Readings)], taken, null);
            return Plan(bench with { Snapshot = bench.Snapshot with { Measurements = bench.Snapshot.Measurements.Add(measured) } }, request);
        }
    }

    private static PlanAnswer Plan(Bench bench, PlanRequest request) =>
        UnitPlanner.Plan(new EstimateBook(new UnitView(bench.Snapshot, new FamilyIndex(bench.Family))), request, new NoHooks());
}
