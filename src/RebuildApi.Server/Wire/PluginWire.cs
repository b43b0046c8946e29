using System.Collections.Immutable;
using RebuildApi.PluginHost;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>A plug-in, how it stands and why.</summary>
/// <param name="Id">The name of its folder, or of its file when it is a family written as one.</param>
/// <param name="State">How it stands.</param>
/// <param name="Reason">Why, in plain words.</param>
/// <param name="Version">Its version, once it has said so.</param>
/// <param name="Author">Its author, once it has said so.</param>
/// <param name="Sha256">The hash that is approved or awaits approval.</param>
/// <param name="Families">The families it supplies.</param>
/// <param name="RefusedFamilies">Families it declared that are not used, with the reason.</param>
/// <param name="ContractVersion">The contract it was compiled against.</param>
/// <param name="Containment">How far its code is kept apart, in plain words.</param>
/// <param name="Faults">How often its rules in code failed.</param>
/// <param name="Since">When it came to this, UTC.</param>
/// <param name="Doubts">What is doubtful in a family file that is used; the first hundred.</param>
public sealed record PluginWire(
    string Id,
    PluginState State,
    string Reason,
    string? Version,
    string? Author,
    string? Sha256,
    ImmutableArray<string> Families,
    ImmutableArray<RefusedFamilyWire> RefusedFamilies,
    string? ContractVersion,
    string? Containment,
    long Faults,
    DateTimeOffset Since,
    ImmutableArray<DiagnosticWire> Doubts)
{
    /// <summary>From the host.</summary>
    public static PluginWire From(PluginStatus status) => new(
        status.Id, status.State, status.Reason, status.Version, status.Author, status.Sha256, status.Families,
        [.. status.RefusedFamilies.Select(r => new RefusedFamilyWire(r.Family, r.Reason, [.. r.Diagnostics.Select(d => d.Line > 0 ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{d.File}:{d.Line}:{d.Column}: {d.Field}: {d.Message}") : $"{d.Field}: {d.Message}")]))],
        status.ContractVersion, status.Containment, status.Faults, status.Since, [.. status.Doubts.Take(MostDoubts).Select(DiagnosticWire.From)]);

    private const int MostDoubts = 100;
}

/// <summary>A family that is not used.</summary>
/// <param name="Family">Its id.</param>
/// <param name="Reason">Why.</param>
/// <param name="Diagnostics">What is wrong with its declaration.</param>
public sealed record RefusedFamilyWire(string Family, string Reason, ImmutableArray<string> Diagnostics);

/// <summary>An approval of exactly these bytes.</summary>
/// <param name="Sha256">The hash that was looked at, 64 hex digits in lower case.</param>
/// <param name="Person">Who approves.</param>
public sealed record PluginApprovalRequest([Words(64)] string Sha256, [Words(100)] string Person);
