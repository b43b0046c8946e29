using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition.Stages;

namespace RebuildApi.Server.Pages;

/// <summary>What a gate asks for and what is signed for: what every unit needs by the words of the pages, what the family wants by its own.</summary>
public sealed class GateWords(FamilyIndex family, PageWords w)
{
    /// <summary>What may be signed for.</summary>
    public ImmutableArray<string> Checks => FamilyGates.Checks(family);

    /// <summary>What a gate asks for.</summary>
    public string Requirement(string id) => FamilyGates.Of(id, family) is { } gate ? gate.Name.In(w.Language) : w.Or("gate." + id, id);

    /// <summary>What to do about what a gate asks for.</summary>
    public string Fix(string id) => FamilyGates.Of(id, family) is { } gate
        ? string.Join(" ", new[] { (gate.Demand as CheckSigned)?.How.In(w.Language), gate.Reason.In(w.Language) }.OfType<string>())
        : w.Or("fix." + id, "");

    /// <summary>What is signed for.</summary>
    public string Check(string id) => FamilyGates.Of(id, family) is { } gate ? gate.Name.In(w.Language) : w.Or("check." + id, id);
}
