using System.Collections.Frozen;
using RebuildApi.Contracts;
using RebuildApi.Engine.Identity;

namespace RebuildApi.Engine.Snapshots;

/// <summary>A family made ready for looking things up. Made once for each declaration; safe to share between threads.</summary>
public sealed class FamilyIndex
{
    private readonly FrozenDictionary<(string Kind, string Characteristic), Characteristic> _characteristics;
    private readonly FrozenDictionary<(string Position, string Characteristic), LimitOverride> _overrides;
    private readonly ILookup<string, PairingRule> _pairingsAt;
    private readonly string? _hookSha256;
    private readonly Lazy<string> _declarationSha256;
    private readonly PluginIdentity? _plugin;

    /// <summary>Indexes a valid family.</summary>
    /// <param name="family">The declaration; ids unique within their lists.</param>
    /// <param name="hookSha256">Hash of the assembly that brings its hooks, if it has any.</param>
    /// <param name="plugin">The plug-in or file that brings it; none when it was made here.</param>
    public FamilyIndex(Family family, string? hookSha256 = null, PluginIdentity? plugin = null)
    {
        Family = family;
        _declarationSha256 = new(() => Canonical.Sha256(family));
        (_hookSha256, _plugin) = (hookSha256, plugin);
        Kinds = family.Kinds.ToFrozenDictionary(k => k.Id, StringComparer.Ordinal);
        Positions = family.Positions.ToFrozenDictionary(p => p.Id, StringComparer.Ordinal);
        Loops = family.Loops.ToFrozenDictionary(l => l.Id, StringComparer.Ordinal);
        Series = family.Series.ToFrozenDictionary(s => s.Id, StringComparer.Ordinal);
        Operations = family.Operations.ToFrozenDictionary(o => o.Id, StringComparer.Ordinal);
        Pairings = family.Pairings.ToFrozenDictionary(p => p.Id, StringComparer.Ordinal);
        Materials = family.Materials.ToFrozenDictionary(m => m.Id, StringComparer.Ordinal);
        _characteristics = family.Kinds
            .SelectMany(k => k.Characteristics.Select(c => (Key: (k.Id, c.Id), Value: c)))
            .ToFrozenDictionary(x => x.Key, x => x.Value);
        _pairingsAt = family.Pairings
            .SelectMany(r => PositionsOf(r, family).Select(p => (Position: p, Rule: r)))
            .ToLookup(x => x.Position, x => x.Rule, StringComparer.Ordinal);
        _overrides = family.Positions
            .SelectMany(p => p.Overrides.Select(o => (Key: (p.Id, o.Characteristic), Value: o)))
            .ToFrozenDictionary(x => x.Key, x => x.Value);
    }

    /// <summary>The declaration.</summary>
    public Family Family { get; }

    /// <summary>Canonical hash of the declaration.</summary>
    public string DeclarationSha256 => _declarationSha256.Value;

    /// <summary>The plug-in or file that brings it; none when it was made here.</summary>
    public PluginIdentity? Plugin => _plugin;

    /// <summary>Kinds by id.</summary>
    public FrozenDictionary<string, PartKind> Kinds { get; }

    /// <summary>Positions by id.</summary>
    public FrozenDictionary<string, Position> Positions { get; }

    /// <summary>Clearances by id.</summary>
    public FrozenDictionary<string, ClearanceLoop> Loops { get; }

    /// <summary>Series by id.</summary>
    public FrozenDictionary<string, Series> Series { get; }

    /// <summary>Operations by id.</summary>
    public FrozenDictionary<string, Operation> Operations { get; }

    /// <summary>Pairing rules by id.</summary>
    public FrozenDictionary<string, PairingRule> Pairings { get; }

    /// <summary>Materials by id.</summary>
    public FrozenDictionary<string, Material> Materials { get; }

    /// <summary>The kind of part that belongs in a position, or null when there is no such position.</summary>
    public PartKind? KindAt(string position) => Positions.TryGetValue(position, out var p) ? Kinds[p.Kind] : null;

    /// <summary>A characteristic of a kind, or null.</summary>
    public Characteristic? CharacteristicOf(string kind, string characteristic) => _characteristics.GetValueOrDefault((kind, characteristic));

    /// <summary>The characteristic that an address names, or null.</summary>
    public Characteristic? CharacteristicAt(Address at) =>
        Positions.TryGetValue(at.Position, out var p) ? CharacteristicOf(p.Kind, at.Characteristic) : null;

    /// <summary>The pairing rules that look at a position, in the family's order: it fills a role, or belongs to the set that the rule names.</summary>
    public IEnumerable<PairingRule> PairingsAt(string position) => _pairingsAt[position];

    /// <summary>What a person calls an attribute or a characteristic of a position, or of any kind that has it when no position is said; null when none has.</summary>
    public string? TermAt(string? position, string id)
    {
        var kinds = position is not null && KindAt(position) is { } kind ? [kind] : Family.Kinds;
        return kinds.Select(k => (k.Attributes.FirstOrDefault(a => a.Id == id)?.Name ?? k.Characteristics.FirstOrDefault(c => c.Id == id)?.Name)?.In("en"))
            .Select(name => name?.EndsWith('?') == true ? id[(id.LastIndexOf('.') + 1)..].Replace('-', ' ') : name)
            .FirstOrDefault(name => !string.IsNullOrEmpty(name));
    }

    private static IEnumerable<string> PositionsOf(PairingRule rule, Family family) => rule.Roles.Values
        .Select(role => role.Split('/')[0])
        .Concat(family.Sets.Where(s => s.Id == rule.Options.GetValueOrDefault("set")).SelectMany(s => s.Positions))
        .Distinct(StringComparer.Ordinal);

    /// <summary>The limits when new at an address: the position's own before the kind's.</summary>
    public Limits? NewLimitsAt(Address at) =>
        _overrides.GetValueOrDefault((at.Position, at.Characteristic))?.New ?? CharacteristicAt(at)?.New;

    /// <summary>The limits to go back into service at an address: the position's own before the kind's.</summary>
    public Limits? ServiceLimitsAt(Address at) =>
        _overrides.GetValueOrDefault((at.Position, at.Characteristic))?.Service ?? CharacteristicAt(at)?.Service;

    /// <summary>The identity of one of this family's rules.</summary>
    public RuleIdentity IdentityOf(string rule) =>
        new(Family.Version, DeclarationSha256, _hookSha256, ContractVersion.Current, EngineVersion.Current, rule) { Plugin = _plugin };
}
