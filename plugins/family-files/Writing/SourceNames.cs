using FamilyFiles.Yaml;

namespace FamilyFiles.Writing;

/// <summary>Gives every source of a family a name: the most usual one of each sort of number the usual name, the others one after their weight.</summary>
internal sealed class SourceNames
{
    private readonly ImmutableArray<KeyValuePair<string, Source>> _names;

    public SourceNames(Family family)
    {
        var numbers = family.Kinds.SelectMany(k => k.Characteristics).SelectMany(c => new[] { c.New, c.Service })
            .Concat(family.Positions.SelectMany(p => p.Overrides).SelectMany(o => new[] { o.New, o.Service }))
            .Concat(family.Loops.SelectMany(l => new[] { l.Window, l.Thermal?.ColdWindow, l.Thermal?.HotWindow }))
            .Concat(family.Operations.SelectMany(o => o.Effects).Select(e => e.Remaining))
            .Concat((family.Fasteners ?? []).SelectMany(f => new[] { f.Torque, f.Angle }))
            .Concat((family.Lubricants ?? []).SelectMany(l => new[] { l.Quantity, l.Temperature }))
            .Concat(family.Pairings.SelectMany(p => p.Cures).SelectMany(c => c.Steps).Select(s => s.Within))
            .OfType<Limits>().Select(l => l.Source)
            .Concat(family.Series.Select(s => s.Source)).Concat(family.Kinds.SelectMany(k => k.ToothSets).Select(t => t.Source)).ToList();
        var rules = family.Pairings.Select(p => p.Source).Concat(family.Damage.Select(d => d.Source)).ToList();
        var likelihoods = family.Causes.Select(c => c.Source).Concat((family.Tests ?? []).Select(t => t.Source)).ToList();
        var materials = family.Materials.Select(m => m.Source).ToList();
        var usual = new[] { ("numbers", numbers), ("rules", rules), ("likelihoods", likelihoods), ("materials", materials) }
            .Where(s => s.Item2.Count > 0).Select(s => KeyValuePair.Create(s.Item1, s.Item2.CountBy(x => x).MaxBy(x => x.Value).Key)).ToList();
        var others = numbers.Concat(rules).Concat(likelihoods).Concat(materials).Distinct().Where(s => usual.All(u => u.Value != s)).ToList();
        _names = [.. usual, .. others.Select((s, i) => KeyValuePair.Create(string.Create(CultureInfo.InvariantCulture, $"source-{i + 1}"), s))];
    }

    public MapNode Section() => Build.Map(_names.Select(n => (n.Key, (Node?)Build.Map([(Forms.ChoiceForm<SourceKind>.WordOf(n.Value.Kind), Build.Say(n.Value.Citation))]))));

    /// <summary>The name of a source, or nothing when it is the usual one of its sort.</summary>
    public ScalarNode? Unless(string usual, Source source) =>
        _names.Any(n => n.Key == usual && n.Value == source) ? null : Build.Say(_names.First(n => n.Value == source).Key);
}
