namespace RebuildApi.Families.Tests;

/// <summary>A unit at random: parts missing, readings in and out of their limits, things seen and not seen. The same number gives the same unit.</summary>
internal static class RandomUnit
{
    private static readonly Taken s_seen = new(null, null, SoundUnit.Person, "bench-1", SnapshotBuilder.Noon, null);

    public static UnitSnapshot Of(Family family, int number)
    {
        var random = new Random(number);
        var empty = new UnitSnapshot($"random-{number}", family.Version, [], [], [], [], [], [], [.. Gauges.All], Policy.Default);
        var places = family.Positions.SelectMany(p => Enumerable.Range(1, p.Quantity).Select(i => (Position: p, Index: i)));
        return places.Where(_ => random.NextDouble() < 0.9).Aggregate(empty, (s, p) => Filled(s, p.Position, p.Index, family, random));
    }

    private static UnitSnapshot Filled(UnitSnapshot s, Position position, int index, Family family, Random random)
    {
        var kind = family.Kinds.Single(k => k.Id == position.Kind);
        var part = new Component($"{position.Id}-{index}", 1, kind.Id, Origin.Unit, ImmutableSortedDictionary<string, string>.Empty, null);
        var seen = kind.Attributes.Where(_ => random.NextDouble() < 0.7).Select(a => (Observation)new AttributeSeen(a.Id, a.Values[random.Next(a.Values.Length)].Id))
            .Concat(Condition(kind, random)).ToList();
        return s with
        {
            Components = s.Components.Add(part),
            Placements = s.Placements.Add(new Placement(position.Id, index, part.Id, PlacementRole.Found, (Facing)random.Next(3), random.Next(2) == 0 ? "A" : "B")),
            Findings = [.. s.Findings, .. seen.Select((o, i) => new Finding($"f:{part.Id}:{i}", part.Id, 1, o, null, s_seen, null))],
            Measurements = [.. s.Measurements, .. kind.Characteristics.Where(c => c.DerivedFrom is null && random.NextDouble() < 0.7).Select(c => Read(c, position, part, random)).OfType<Measurement>()],
        };
    }

    private static Observation[] Condition(PartKind kind, Random random) => random.NextDouble() switch
    {
        < 0.6 => [new Sound()],
        < 0.8 when !kind.DamageClasses.IsEmpty => [new DamageSeen(kind.DamageClasses[random.Next(kind.DamageClasses.Length)], random.Next(2) == 0 ? "slight" : "severe", null)],
        _ => [],
    };

    private static Measurement? Read(Characteristic c, Position position, Component part, Random random)
    {
        var limits = position.Overrides.FirstOrDefault(o => o.Characteristic == c.Id)?.Service ?? c.Service ?? c.New;
        var (low, high) = (limits?.Low ?? limits?.High, limits?.High ?? limits?.Low);
        if (low is null || high is null)
            return null;
        var readings = Enumerable.Range(0, c.MinimumReadings).Select(_ => Gauges.Reading(Between(low, high, (1.4 * random.NextDouble()) - 0.2)));
        return new Measurement($"m:{part.Id}/{c.Id}", part.Id, 1, c.Id, [.. readings], s_seen with { Instrument = c.Dimension == Dimension.Count ? null : Gauges.For(c.Dimension) }, null);
    }

    /// <summary>A share of the way from one end to the other, and somewhat beyond both.</summary>
    private static Quantity Between(Quantity low, Quantity high, double share) => (low, high) is (Exact a, Exact b)
        ? new Exact(new Length(a.Value.Nanometres + (long)(share * (b.Value.Nanometres - a.Value.Nanometres))))
        : new Real(low.Kind == Dimension.Count ? Math.Round(low.InSi + share) : low.InSi + (share * (high.InSi - low.InSi)), low.Kind);
}
