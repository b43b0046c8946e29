using RebuildApi.Engine.Families;

namespace RebuildApi.Families.Tests;

/// <summary>One thing wrong in a sound family is found, named and placed.</summary>
public class FamilyCheckTests
{
    private static readonly Family s_sound = Shipped.Of("brackenmere-4");

    /// <summary>What is spoilt, the code it is found by, and the field that is named.</summary>
    public static TheoryData<string, string, string> Faults => new()
    {
        { "upper-case family id", "id-form", "version.id" },
        { "version of two numbers", "version-form", "version.semVer" },
        { "position twice", "id-twice", "positions[third-gear]" },
        { "kind of a position gone", "kind-unknown", "positions[mainshaft].kind" },
        { "no parts in a position", "quantity-range", "positions[mainshaft].quantity" },
        { "material gone", "material-unknown", "kinds[mainshaft].material" },
        { "loop without members", "loop-open", "loops[third-end-play].terms" },
        { "loop that nothing closes", "loop-open", "loops[third-end-play].terms" },
        { "window of angles", "limit-dimension", "loops[third-end-play].window" },
        { "colder than nothing", "temperature-range", "loops[third-end-play].thermal" },
        { "pairing window upside down", "window-upside-down", "pairings[first-ring-to-cone].parameters.gap-low" },
        { "piece that can't be read", "characteristic-unknown", "series[snap-ring-3-4].kind" },
        { "coefficient of zero", "coefficient-range", "loops[third-end-play].terms[0]" },
        { "address of nothing", "address-unknown", "loops[third-end-play].terms[0]" },
        { "series gone", "series-unknown", "loops[third-end-play].terms[3].series" },
        { "thickest first", "series-order", "series[snap-ring-3-4].members" },
        { "empty series", "series-empty", "series[snap-ring-3-4].members" },
        { "shaft too short for its gears", "loop-not-closed", "loops[third-end-play]" },
        { "one tooth too many", "mesh-off-centre", "meshes[third-mesh]" },
        { "same hand on both", "mesh-hands-alike", "meshes[third-mesh]" },
        { "damage nobody looks for", "damage-unknown", "damage[0].damageClass" },
        { "symptom gone", "symptom-unknown", "causes[third-flanks-leaned].explains[jumps-out-under-load]" },
        { "likelihood above one", "probability-range", "causes[third-flanks-leaned].explains[jumps-out-under-load]" },
        { "gear that the symptom does not have", "gear-unknown", "causes[third-flanks-leaned].explains[jumps-out-under-load]" },
        { "template gone", "template-unknown", "pairings[first-engagement-form].template" },
        { "limits of another dimension", "limit-dimension", "kinds[mainshaft].characteristics[runout].service" },
        { "no source", "source-missing", "kinds[mainshaft].characteristics[runout].service" },
        { "nothing to inspect", "nothing-to-inspect", "positions[mainshaft]" },
        { "cut of a step of nothing", "effect-range", "operations[face-hub-3-4-rear].effects[width]" },
        { "fasteners that hold nothing", "positions-missing", "fasteners[cover-bolts].positions" },
        { "fasteners of a place that is gone", "position-unknown", "fasteners[cover-bolts].positions" },
        { "no fasteners", "quantity-range", "fasteners[cover-bolts].quantity" },
        { "torque in newtons", "limit-dimension", "fasteners[cover-bolts].torque" },
        { "torque of nothing", "limit-range", "fasteners[cover-bolts].torque" },
        { "torque from nowhere", "source-missing", "fasteners[cover-bolts].torque" },
        { "turned on for ever", "limit-range", "fasteners[cover-bolts].angle" },
        { "fasteners twice", "id-twice", "fasteners[cover-bolts]" },
        { "oil by weight", "limit-dimension", "lubricants[gearbox-oil].quantity" },
        { "a barrel of oil", "limit-range", "lubricants[gearbox-oil].quantity" },
        { "oil read when red hot", "limit-range", "lubricants[gearbox-oil].temperature" },
        { "oil for nothing", "positions-missing", "lubricants[gearbox-oil].positions" },
        { "gate on a clearance that is gone", "loop-unknown", "gates[counter-end-play-read].demand" },
        { "gate on a clearance that nobody can read", "loop-not-read", "gates[counter-end-play-read].demand" },
        { "gate on a test that is gone", "test-unknown", "gates[counter-end-play-read].demand" },
        { "gate on a test after it was stripped", "test-too-late", "gates[counter-end-play-read].stage" },
        { "gate on a test before it is stripped", "test-too-early", "gates[counter-end-play-read].stage" },
        { "exception where a person can be hurt", "exception-never", "gates[counter-end-play-read].mayExcept" },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void One_fault_is_found_by_its_code_at_its_field(string fault, string code, string field)
    {
        var found = FamilyCheck.Check(Spoilt(fault));

        Assert.Contains(found, d => d.Code == code && d.Field == field && d.IsError);
    }

    [Fact]
    public void A_series_that_no_clearance_uses_is_a_doubt_and_no_error()
    {
        var spare = s_sound with { Series = s_sound.Series.Add(s_sound.Series[0] with { Id = "spare" }) };

        Assert.Contains(FamilyCheck.Check(spare), d => d.Code == "series-unused" && !d.IsError);
    }

    private static Family Spoilt(string fault) => fault switch
    {
        "upper-case family id" => s_sound with { Version = s_sound.Version with { Id = "Brackenmere" } },
        "version of two numbers" => s_sound with { Version = s_sound.Version with { SemVer = "1.0" } },
        "position twice" => s_sound with { Positions = s_sound.Positions.Add(Position("third-gear")) },
        "kind of a position gone" => Changed("mainshaft", p => p with { Kind = "axle" }),
        "no parts in a position" => Changed("mainshaft", p => p with { Quantity = 0 }),
        "material gone" => Changed(k => k with { Material = "wood" }),
        "loop without members" => Changed(l => l with { Terms = [] }),
        "loop that nothing closes" => Changed(l => l with { Terms = [l.Terms[0]] }),
        "window of angles" => Changed(l => l with { Window = new Limits(new Real(0, Dimension.Angle), null, null, FamilyBuilder.Invented) }),
        "colder than nothing" => Changed(l => l with { Thermal = new Thermal(-10, 350, null, null) }),
        "pairing window upside down" => s_sound with
        {
            Pairings = [.. s_sound.Pairings.Select(r => r.Id == "first-ring-to-cone" ? r with { Parameters = r.Parameters.ToImmutableSortedDictionary().SetItem("gap-low", new Exact(Length.Inches(1))) } : r)],
        },
        "piece that can't be read" => Changed(s => s with { Kind = "input-seal" }),
        "coefficient of zero" => Changed(l => l with { Terms = l.Terms.SetItem(0, l.Terms[0] with { Numerator = 0 }) }),
        "address of nothing" => Changed(l => l with { Terms = l.Terms.SetItem(0, new Term(new OfPart(new Address("mainshaft", "nothing")), 1)) }),
        "series gone" => Changed(l => l with { Terms = l.Terms.SetItem(3, new Term(new OfSeries("gone", "snap-ring-3-4"), -1)) }),
        "thickest first" => Changed(s => s with { Members = [.. s.Members.Reverse()] }),
        "empty series" => Changed(s => s with { Members = [] }),
        "shaft too short for its gears" => Changed(k => k with { Characteristics = [.. k.Characteristics.Select(c => c.Id == "third-seat" ? c with { New = Window(2.60m, 2.61m), Service = null } : c)] }),
        "one tooth too many" => ChangedTeeth(t => t with { Teeth = 31 }),
        "same hand on both" => ChangedTeeth(t => t with { Hand = Hand.Right }),
        "damage nobody looks for" => s_sound with { Damage = [s_sound.Damage[0] with { Kind = "oil", DamageClass = "rust" }] },
        "symptom gone" => s_sound with { Symptoms = s_sound.Symptoms.RemoveAt(0) },
        "likelihood above one" => ChangedLink(l => l with { High = 1.2 }),
        "gear that the symptom does not have" => ChangedLink(l => l with { Gear = "seventh" }),
        "template gone" => s_sound with { Pairings = s_sound.Pairings.SetItem(0, s_sound.Pairings[0] with { Template = "gone" }) },
        "limits of another dimension" => ChangedRunout(new Limits(null, new Real(1, Dimension.Angle), null, FamilyBuilder.Invented)),
        "no source" => ChangedRunout(Limits.AtMost(Length.Inches(0.002m), new Source(SourceKind.Judgement, " "))),
        "nothing to inspect" => Changed(k => k with { Characteristics = [], Attributes = [], DamageClasses = [] }) with { Loops = [], Pairings = [], Causes = [], Tests = null, Fasteners = null, Lubricants = null, Gates = null, Operations = [], Damage = [], Meshes = [] },
        "cut of a step of nothing" => s_sound with { Operations = s_sound.Operations.SetItem(0, s_sound.Operations[0] with { Effects = [s_sound.Operations[0].Effects[0] with { Step = Length.Zero }] }) },
        "fasteners that hold nothing" => Tightened(f => f with { Positions = [] }),
        "fasteners of a place that is gone" => Tightened(f => f with { Positions = ["gone"] }),
        "no fasteners" => Tightened(f => f with { Quantity = 0 }),
        "torque in newtons" => Tightened(f => f with { Torque = Limited(Dimension.Force, 20) }),
        "torque of nothing" => Tightened(f => f with { Torque = Limited(Dimension.Torque, 0) }),
        "torque from nowhere" => Tightened(f => f with { Torque = new Limits(new Real(20, Dimension.Torque), null, null, new Source(SourceKind.Judgement, " ")) }),
        "turned on for ever" => Tightened(f => f with { Angle = Limited(Dimension.Angle, 7) }),
        "fasteners twice" => s_sound with { Fasteners = [.. s_sound.Fasteners!, s_sound.Fasteners!.Single(f => f.Id == "cover-bolts")] },
        "oil by weight" => Filled(l => l with { Quantity = Limited(Dimension.Mass, 1) }),
        "a barrel of oil" => Filled(l => l with { Quantity = Limited(Dimension.Volume, 0.159) }),
        "oil read when red hot" => Filled(l => l with { Temperature = Limited(Dimension.Temperature, 800) }),
        "oil for nothing" => Filled(l => l with { Positions = [] }),
        "gate on a clearance that is gone" => Gated(g => g with { Demand = new LoopRead("gone") }),
        "gate on a clearance that nobody can read" => Gated(g => g with { Demand = new LoopRead(s_sound.Loops.First(l => l.Trial == TrialMethod.None).Id) }),
        "gate on a test that is gone" => Gated(g => g with { Demand = new TestTried("gone") }),
        "gate on a test after it was stripped" => Gated(g => g with { Demand = new TestTried(TestAt(TestStage.BeforeStripDown)) }),
        "gate on a test before it is stripped" => Gated(g => g with { Demand = new TestTried(TestAt(TestStage.Teardown)), Stage = GateStage.PreStrip }),
        "exception where a person can be hurt" => Gated(g => g with { Criticality = Criticality.SafetyCritical, MayExcept = true }),
        _ => throw new ArgumentOutOfRangeException(nameof(fault)),
    };

    private static Family Tightened(Func<Fastener, Fastener> change) => s_sound with { Fasteners = [.. s_sound.Fasteners!.Select(f => f.Id == "cover-bolts" ? change(f) : f)] };

    private static Family Filled(Func<Lubricant, Lubricant> change) => s_sound with { Lubricants = [.. s_sound.Lubricants!.Select(change)] };

    private static Family Gated(Func<FamilyGate, FamilyGate> change) => s_sound with { Gates = [.. s_sound.Gates!.Select(g => g.Id == "counter-end-play-read" ? change(g) : g)] };

    private static Limits Limited(Dimension dimension, double si) => new(new Real(si, dimension), null, null, FamilyBuilder.Invented);

    private static string TestAt(TestStage stage) => s_sound.Tests!.First(t => t.Stage == stage).Id;

    private static Limits Window(decimal low, decimal high) => Limits.Between(Length.Inches(low), Length.Inches(high), FamilyBuilder.Invented);

    private static Position Position(string id) => s_sound.Positions.Single(p => p.Id == id);

    private static Family Changed(string position, Func<Position, Position> change) =>
        s_sound with { Positions = s_sound.Positions.Replace(Position(position), change(Position(position))) };

    private static Family Changed(Func<PartKind, PartKind> change) => Changed("mainshaft", change);

    private static Family Changed(string kind, Func<PartKind, PartKind> change) =>
        s_sound with { Kinds = [.. s_sound.Kinds.Select(k => k.Id == kind ? change(k) : k)] };

    private static Family Changed(Func<ClearanceLoop, ClearanceLoop> change) =>
        s_sound with { Loops = [.. s_sound.Loops.Select(l => l.Id == "third-end-play" ? change(l) : l)] };

    private static Family Changed(Func<Series, Series> change) =>
        s_sound with { Series = [.. s_sound.Series.Select(s => s.Id == "snap-ring-3-4" ? change(s) : s)] };

    private static Family ChangedTeeth(Func<ToothSet, ToothSet> change) => Changed("third-gear", k => k with { ToothSets = [change(k.ToothSets[0])] });

    private static Family ChangedLink(Func<SymptomLink, SymptomLink> change) => s_sound with
    {
        Causes = [.. s_sound.Causes.Select(c => c.Id == "third-flanks-leaned" ? c with { Explains = [change(c.Explains[0])] } : c)],
    };

    private static Family ChangedRunout(Limits service) => Changed(k => k with
    {
        Characteristics = [.. k.Characteristics.Select(c => c.Id == "runout" ? c with { Service = service } : c)],
    });
}
