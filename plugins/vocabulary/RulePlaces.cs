namespace FamilyWords;

/// <summary>Where the parts of a pairing sit, and what it calls what it looks at.</summary>
internal sealed class RulePlaces(Family family, PairingRule rule)
{
    /// <summary>The positions that fill its roles, and those of the set that it names.</summary>
    public ImmutableArray<string> Positions { get; } =
    [
        .. rule.Roles.Values.Select(r => r.Split('/')[0])
            .Concat(family.Sets.Where(s => s.Id == rule.Options.GetValueOrDefault("set")).SelectMany(s => s.Positions))
            .Distinct(StringComparer.Ordinal),
    ];

    /// <summary>The attribute that an option names, in every role.</summary>
    public IEnumerable<string> NamedByOptions => rule.Options.TryGetValue("attribute", out var name) ? ["*/" + name] : [];

    /// <summary>The characteristics that options name, such as <c>first.characteristic</c>.</summary>
    public IEnumerable<string> ReadByOptions => rule.Options
        .Where(o => o.Key.EndsWith(".characteristic", StringComparison.Ordinal) || o.Key.EndsWith(".centre-distance", StringComparison.Ordinal))
        .Select(o => $"{o.Key.Split('.')[0]}/{o.Value}");

    /// <summary>Role and name as an address: <c>gear/form</c> of a role filled by <c>third-gear/dog</c> is <c>third-gear/dog.form</c>.</summary>
    public IEnumerable<string> Named(IEnumerable<string> roleAndName) => roleAndName
        .Select(r => r.Split('/', 2))
        .SelectMany(r => r[0] == "*" ? rule.Roles.Keys.Select(role => At(role, r[1])) : rule.Roles.ContainsKey(r[0]) ? [At(r[0], r[1])] : [])
        .Distinct(StringComparer.Ordinal);

    public string At(string role, string name) => rule.Roles[role].Split('/', 2) switch
    {
        [var position, var feature] when Has(position, $"{feature}.{name}") => $"{position}/{feature}.{name}",
        [var position, ..] => $"{position}/{name}",
        _ => throw new InvalidOperationException(),
    };

    public bool IsSeen(string at) => at.Split('/', 2) is var p && CaseValues.KindAt(family, p[0]).Attributes.Any(a => a.Id == p[1]);

    public bool IsRead(string at) => at.Split('/', 2) is var p && CaseValues.KindAt(family, p[0]).Characteristics.Any(c => c.Id == p[1]);

    /// <summary>Another value of an attribute than the one given.</summary>
    public string Other(string at, params string[] than) =>
        at.Split('/', 2) is var p ? CaseValues.KindAt(family, p[0]).Attributes.Single(a => a.Id == p[1]).Values.First(v => !than.Contains(v.Id)).Id : "";

    private bool Has(string position, string name) => IsSeen($"{position}/{name}") || IsRead($"{position}/{name}");
}
