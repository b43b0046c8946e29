using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>A unit as the benches know it: post what is read and seen, then judge. Immutable: each call gives a new one.</summary>
internal sealed record Bench(Family Family, UnitSnapshot Snapshot)
{
    private static readonly Taken s_seen = new(null, null, SoundUnit.Person, "bench-1", SnapshotBuilder.Noon, null);

    public Judgement Judge() => UnitJudge.Judge(new UnitView(Snapshot, new FamilyIndex(Family)), new NoHooks());

    public Bench Places(Position position, int index, PartKind kind, IReadOnlyDictionary<string, string> attributes)
    {
        var id = Id(position.Id, index);
        var part = new Component(id, 1, kind.Id, kind.SingleUse ? Origin.New : Origin.Unit, attributes, null);
        var facing = Family.Pairings.FirstOrDefault(r => r.Options.ContainsKey("facing") && r.Roles.Values.Contains(position.Id))?.Options["facing"];
        var placement = new Placement(position.Id, index, id, kind.SingleUse ? PlacementRole.Chosen : PlacementRole.Found, facing == "output" ? Facing.Output : Facing.Input, "A");
        return this with { Snapshot = Snapshot with { Components = Snapshot.Components.Add(part), Placements = Snapshot.Placements.Add(placement) } };
    }

    /// <summary>Readings in inches, in place of those before.</summary>
    public Bench ReadsInches(string at, params decimal[] inches) => Reads(at, 1, [.. inches.Select(i => Gauges.Reading(new Exact(Length.Inches(i))))]);

    /// <summary>Readings in degrees, in place of those before.</summary>
    public Bench ReadsDegrees(string at, params double[] degrees) => Reads(at, 1, [.. degrees.Select(d => Gauges.Reading(new Real(d * Math.PI / 180, Dimension.Angle)))]);

    public Bench Counts(string at, int count) => Reads(at, 1, [Gauges.Reading(new Real(count, Dimension.Count))]);

    /// <summary>The same readings on each of several like parts.</summary>
    public Bench EachReadsInches(string position, string characteristic, decimal inches) =>
        Enumerable.Range(1, Family.Positions.Single(p => p.Id == position).Quantity).Aggregate(this, (b, i) =>
            b.Reads($"{position}/{characteristic}", i, [.. Enumerable.Repeat(Gauges.Reading(new Exact(Length.Inches(inches))), 4)]));

    public Bench Reads(string at, int index, ImmutableArray<Reading> readings)
    {
        var address = Address.TryParse(at)!;
        var id = Id(address.Position, index);
        var dimension = Family.Kinds.Single(k => k.Id == Family.Positions.Single(p => p.Id == address.Position).Kind).Characteristics.Single(c => c.Id == address.Characteristic).Dimension;
        var measurement = new Measurement($"m:{id}/{address.Characteristic}", id, 1, address.Characteristic, readings, s_seen with { Instrument = dimension == Dimension.Count ? null : Gauges.For(dimension) }, null);
        return this with { Snapshot = Unread(at, index).Snapshot with { Measurements = Unread(at, index).Snapshot.Measurements.Add(measurement) } };
    }

    /// <summary>Nobody has read it.</summary>
    public Bench Unread(string at, int index = 1)
    {
        var address = Address.TryParse(at)!;
        var id = $"m:{Id(address.Position, index)}/{address.Characteristic}";
        return this with { Snapshot = Snapshot with { Measurements = Snapshot.Measurements.RemoveAll(m => m.Id == id) } };
    }

    /// <summary>Damage, in place of "sound".</summary>
    public Bench Damaged(string position, string damage, string extent, string? place = null) =>
        NotLookedAt(position).Sees(position, 1, new DamageSeen(damage, extent, place));

    /// <summary>Nobody has looked at it.</summary>
    public Bench NotLookedAt(string position) => this with { Snapshot = Snapshot with { Findings = Snapshot.Findings.RemoveAll(f => f.Component == position) } };

    public Bench Sees(string position, int index, Observation seen) => this with
    {
        Snapshot = Snapshot with { Findings = Snapshot.Findings.Add(new Finding($"f{Snapshot.Findings.Length + 1}", Id(position, index), 1, seen, null, s_seen, null)) },
    };

    /// <summary>An attribute as found, on each of the like parts of a position.</summary>
    public Bench Shows(string position, string attribute, string value) =>
        Enumerable.Range(1, Family.Positions.Single(p => p.Id == position).Quantity)
            .Aggregate(this, (b, i) => b.Sees(position, i, new AttributeSeen(attribute, value)));

    public Bench Complains(string symptom, string? gear = null) => this with { Snapshot = Snapshot with { Complaint = Snapshot.Complaint.Add(new SymptomSeen(symptom, gear)) } };

    /// <summary>The value itself decides, so that a limit is felt to the nanometre.</summary>
    public Bench Deciding() => this with { Snapshot = Snapshot with { Policy = Snapshot.Policy with { Decision = DecisionRule.SimpleAcceptance } } };

    /// <summary>A piece known by the member it is sold as, and not read.</summary>
    public Bench Takes(string position, string member)
    {
        var unread = Unread(position + "/thickness");
        return unread with
        {
            Snapshot = unread.Snapshot with { Components = [.. Snapshot.Components.Select(c => c.Id == position ? c with { Attributes = c.Attributes.ToImmutableSortedDictionary().SetItem("member", member) } : c)] },
        };
    }

    /// <summary>How a part sits.</summary>
    public Bench Placing(string position, Func<Placement, Placement> change) => this with
    {
        Snapshot = Snapshot with { Placements = [.. Snapshot.Placements.Select(p => p.Position == position ? change(p) : p)] },
    };

    /// <summary>A like part in place of the one that was found there.</summary>
    public Bench Exchanges(string position)
    {
        var found = Snapshot.Placements.First(p => p.Position == position);
        var part = Snapshot.Components.Single(c => c.Id == found.Component) with { Id = found.Component + "-other", Origin = Origin.Shelf };
        return this with
        {
            Snapshot = Snapshot with { Components = Snapshot.Components.Add(part), Placements = Snapshot.Placements.Add(found with { Component = part.Id, Role = PlacementRole.Fitted }) },
        };
    }

    /// <summary>No piece chosen there yet.</summary>
    public Bench Empties(string position) => this with { Snapshot = Snapshot with { Placements = Snapshot.Placements.RemoveAll(p => p.Position == position) } };

    public Bench Tries(string loop, string position, string member, params Reading[] gap)
    {
        var terms = Family.Loops.Single(l => l.Id == loop).Terms.Select(t => t.Of).ToArray();
        var series = Family.Series.Single(s => s.Id == terms.OfType<OfSeries>().Single(s => s.Position == position).Series);
        var fitted = terms.OfType<OfPart>().Select(p => p.At.Position).Distinct().Select(p => new FittedPart(p, p, 1));
        var piece = new FittedPiece(position, series.Id, member, series.Members.Single(m => m.Id == member).Thickness);
        var trial = new TrialAssembly("t1", loop, [.. fitted], [piece], null, [.. gap], s_seen with { Instrument = Gauges.OfLength }, null);
        return this with { Snapshot = Snapshot with { Trials = Snapshot.Trials.Add(trial) } };
    }

    private string Id(string position, int index) => Family.Positions.Single(p => p.Id == position).Quantity == 1 ? position : $"{position}-{index}";
}
