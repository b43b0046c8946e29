namespace FamilyWords;

/// <summary>
/// A worked case in the making: which parts are there, what is read and seen on them. What is said again stands in place of what was said before.
/// Every reading of a characteristic is alike, but for a spread, where the first is zero.
/// </summary>
internal sealed record CaseDraft(Family Family, string Name)
{
    private ImmutableArray<string> Positions { get; init; } = [];

    private ImmutableHashSet<string> Exchanged { get; init; } = [];

    private ImmutableSortedDictionary<string, Quantity> Values { get; init; } = ImmutableSortedDictionary<string, Quantity>.Empty.WithComparers(StringComparer.Ordinal);

    private ImmutableSortedDictionary<string, string> Sights { get; init; } = ImmutableSortedDictionary<string, string>.Empty.WithComparers(StringComparer.Ordinal);

    private ImmutableDictionary<string, Facing> Facings { get; init; } = ImmutableDictionary<string, Facing>.Empty;

    private ImmutableHashSet<string> Marked { get; init; } = [];

    /// <summary>Parts that came with the gearbox, or new ones where a part is used once or chosen by its size.</summary>
    public CaseDraft Places(params IEnumerable<string> positions) => this with { Positions = [.. Positions.Union(positions)] };

    /// <summary>A new part in place of the one that was there.</summary>
    public CaseDraft Exchanges(string position) => this with { Exchanged = Exchanged.Add(position) };

    /// <summary>What is read at <c>position/characteristic</c>.</summary>
    public CaseDraft Reads(string at, Quantity value) => Places(PositionOf(at)) with { Values = Values.SetItem(at, value) };

    /// <summary>What is read there so far.</summary>
    public Quantity ValueAt(string at) => Values[at];

    /// <summary>What is seen at <c>position/attribute</c>.</summary>
    public CaseDraft Shows(string at, string value) => Places(PositionOf(at)) with { Sights = Sights.SetItem(at, value) };

    public CaseDraft Faces(string position, Facing facing) => this with { Facings = Facings.SetItem(position, facing) };

    /// <summary>The parts stand to each other as their marks say.</summary>
    public CaseDraft Marks(params IEnumerable<string> positions) => this with { Marked = Marked.Union(positions) };

    /// <summary>The whole case, found parts before chosen ones.</summary>
    public GoldenCase Expects(params IEnumerable<(string Subject, string Outcome)> expected)
    {
        var parts = Positions.OrderBy(IsNew).SelectMany(p => Indexes(p).Select(i => (Position: p, Index: i)));
        var placed = parts.Aggregate(Case(Name, Family.Version), (g, p) => Placed(g, p.Position, p.Index));
        var read = Values.SelectMany(v => Indexes(PositionOf(v.Key)).Select(i => (At: v.Key, Index: i, v.Value)))
            .Aggregate(placed, (g, r) => g.Reads(r.At, r.Index, ReadingsOf(r.At, r.Value)));
        var seen = Sights.SelectMany(s => Indexes(PositionOf(s.Key)).Select(i => (s.Key, Index: i, s.Value)))
            .Aggregate(read, (g, s) => g.Shows(PositionOf(s.Key), s.Key[(PositionOf(s.Key).Length + 1)..], s.Value, s.Index));
        return expected.Aggregate(seen, (g, e) => g.Expect(e.Subject, e.Outcome));
    }

    private GoldenCase Placed(GoldenCase g, string position, int index)
    {
        var kind = At(position).Kind;
        return IsNew(position)
            ? g.Placed(position, kind, index, Origin.New, PlacementRole.Chosen, Facings.GetValueOrDefault(position), Mark(position))
            : g.Placed(position, kind, index, Origin.Unit, PlacementRole.Found, Facings.GetValueOrDefault(position), Mark(position));
    }

    private IEnumerable<Reading> ReadingsOf(string at, Quantity value)
    {
        var c = CaseValues.CharacteristicAt(Family, at);
        var count = Math.Max(1, c.MinimumReadings);
        var said = CaseValues.Reading(value);
        return Enumerable.Range(0, count).Select(i => i == 0 && c.Report == Statistic.Spread ? CaseValues.Zero(said) : said);
    }

    private IEnumerable<int> Indexes(string position) => Enumerable.Range(1, At(position).Fewest ?? At(position).Quantity);

    private bool IsNew(string position) => Exchanged.Contains(position) || CaseValues.KindAt(Family, position).SingleUse;

    private string? Mark(string position) => Marked.Contains(position) ? "A" : null;

    private Position At(string position) => Family.Positions.Single(p => p.Id == position);

    private static string PositionOf(string at) => at.Split('/', 2)[0];
}
