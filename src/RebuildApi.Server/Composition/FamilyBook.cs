using System.Runtime.CompilerServices;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.PluginHost;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Composition;

/// <summary>The loaded families made ready for looking things up, each indexed once for as long as it is loaded.</summary>
public sealed class FamilyBook(IPluginCatalog catalog)
{
    private readonly ConditionalWeakTable<LoadedFamily, FamilyIndex> _indexes = [];

    /// <summary>Every family that can be used now, by id.</summary>
    public IEnumerable<FamilyIndex> All => catalog.Families.OrderBy(f => f.Family.Version.Id, StringComparer.Ordinal).Select(Index);

    /// <summary>A family, or null when none of this id is loaded.</summary>
    public FamilyIndex? Find(string id) => catalog.Find(id) is { } loaded ? Index(loaded) : null;

    /// <summary>A family that an address names.</summary>
    /// <exception cref="ProblemException">None of this id is loaded.</exception>
    public FamilyIndex Require(string id) => Find(id) ?? throw new ProblemException(Problems.UnknownFamily, "No loaded plug-in brings a family of this id.");

    /// <summary>The very edition that a unit is pinned to, or null with the reason in words.</summary>
    public FamilyIndex? Pinned(FamilyVersion pinned, out string? whyNot)
    {
        var family = Find(pinned.Id);
        whyNot = family is null
            ? $"No loaded plug-in brings the family {pinned.Id}."
            : family.Family.Version != pinned ? $"The unit is pinned to {pinned.Id} {pinned.SemVer}; loaded is {family.Family.Version.SemVer}." : null;
        return whyNot is null ? family : null;
    }

    /// <summary>The very edition that a unit is pinned to.</summary>
    /// <exception cref="ProblemException">It is not loaded.</exception>
    public FamilyIndex RequirePinned(FamilyVersion pinned) => Pinned(pinned, out var whyNot) ?? throw new ProblemException(Problems.RulesUnavailable, whyNot!);

    private FamilyIndex Index(LoadedFamily loaded) =>
        _indexes.GetValue(loaded, l => new FamilyIndex(l.Family, l.Family.Hooks.IsEmpty ? null : l.Supplier.Sha256, l.Supplier));
}
