using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>
/// A unit of a family in which everything was looked at and is sound, every characteristic was read in the middle of its drawing limits, every
/// attribute is what a healthy unit shows, and the middle piece of each series (or a pack that comes nearest) is chosen.
/// </summary>
internal static class SoundUnit
{
    public const string Person = "Ada";

    public static Bench Of(Family family, IReadOnlyDictionary<string, string> healthy)
    {
        var index = new FamilyIndex(family);
        var empty = new UnitSnapshot("sound", family.Version, [], [], [], [], [], [], [.. Gauges.All], Policy.Default);
        return family.Positions.Aggregate(new Bench(family, empty), (bench, p) => Filled(bench, p, index, healthy));
    }

    private static Bench Filled(Bench bench, Position position, FamilyIndex index, IReadOnlyDictionary<string, string> healthy)
    {
        var kind = index.Kinds[position.Kind];
        var pieces = Pieces.At(position, index);
        return Enumerable.Range(1, position.Quantity).Aggregate(bench, (b, i) =>
        {
            var placed = b.Places(position, i, kind, kind.Attributes.ToImmutableSortedDictionary(a => a.Id, a => healthy[a.Id], StringComparer.Ordinal));
            var read = kind.Characteristics.Where(c => c.DerivedFrom is null).Aggregate(placed, (x, c) =>
                x.Reads($"{position.Id}/{c.Id}", i, Values(c, pieces.IsEmpty || c.Id != "thickness" ? index.NewLimitsAt(At(position, c)) ?? index.ServiceLimitsAt(At(position, c))! : Limits.Between(pieces[i - 1], pieces[i - 1], FamilyBuilder.Invented))));
            return read.Sees(position.Id, i, new Sound());
        });
    }

    private static Address At(Position position, Characteristic c) => new(position.Id, c.Id);

    /// <summary>As many readings as are asked for; a spread gets a spread.</summary>
    private static ImmutableArray<Reading> Values(Characteristic c, Limits limits)
    {
        var middle = Middle(limits);
        return [.. Enumerable.Range(0, c.MinimumReadings).Select(i => Gauges.Reading(c.Report == Statistic.Spread && i > 0 ? Half(middle) : c.Report == Statistic.Spread ? Zero(middle) : middle))];
    }

    private static Quantity Middle(Limits limits) => (limits.Low, limits.High) switch
    {
        (Exact low, Exact high) => new Exact(new Length((low.Value.Nanometres + high.Value.Nanometres) / 2)),
        (Real low, Real high) => new Real((low.Si + high.Si) / 2, low.Dimension),
        ({ } low, null) => low is Exact e ? new Exact(new Length(e.Value.Nanometres * 11 / 10)) : new Real(low.InSi * 1.1, low.Kind),
        (null, { } high) => Half(high),
        _ => throw new InvalidOperationException(),
    };

    private static Quantity Half(Quantity q) => q is Exact e ? new Exact(new Length(e.Value.Nanometres / 2)) : new Real(q.InSi / 2, q.Kind);

    private static Quantity Zero(Quantity q) => q is Exact ? new Exact(Length.Zero) : new Real(0, q.Kind);
}
