using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost;

/// <summary>How one plug-in stands, and why.</summary>
/// <param name="Id">Its id: the name of its folder.</param>
/// <param name="State">How it stands.</param>
/// <param name="Reason">Why, in plain words.</param>
/// <param name="Version">Its version, once it has said so.</param>
/// <param name="Author">Its author, once it has said so.</param>
/// <param name="Sha256">The hash that is approved or awaits approval, lower-case hex; none when its files could not be read.</param>
/// <param name="Families">Ids of the families it supplies now.</param>
/// <param name="RefusedFamilies">Families it declared that are not used, each with the reason.</param>
/// <param name="ContractVersion">The contract it was compiled against, major and minor, once it is known.</param>
/// <param name="Containment">How far its code is kept apart, in plain words; none when none of its code may run.</param>
/// <param name="Faults">How often its rules in code failed since it was taken up.</param>
/// <param name="Since">When it came to this, UTC.</param>
public sealed record PluginStatus(
    string Id,
    PluginState State,
    string Reason,
    string? Version,
    string? Author,
    string? Sha256,
    ImmutableArray<string> Families,
    ImmutableArray<RefusedFamily> RefusedFamilies,
    string? ContractVersion,
    string? Containment,
    long Faults,
    DateTimeOffset Since)
{
    /// <summary>What is doubtful in the families that are used.</summary>
    public ImmutableArray<Diagnostic> Doubts { get; init; } = [];
}

/// <summary>A family that a plug-in declared and that is not used.</summary>
/// <param name="Family">Its id.</param>
/// <param name="Reason">Why, in plain words.</param>
/// <param name="Diagnostics">What is wrong with it, if the declaration itself is.</param>
public sealed record RefusedFamily(string Family, string Reason, ImmutableArray<Diagnostic> Diagnostics);
