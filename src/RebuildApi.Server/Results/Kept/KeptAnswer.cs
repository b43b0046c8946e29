using System.Collections.Immutable;
using RebuildApi.PluginHost;
using RebuildApi.Storage;

namespace RebuildApi.Server.Results;

/// <summary>An answer as it went out.</summary>
/// <param name="From">What the shop's records and rules were then.</param>
/// <param name="Etag">Its entity tag.</param>
/// <param name="Link">Its Link header, if it had one.</param>
/// <param name="ContentType">Its media type.</param>
/// <param name="Body">Its bytes.</param>
public sealed record KeptAnswer(Moment From, string Etag, string? Link, string ContentType, ReadOnlyMemory<byte> Body);

/// <summary>A state of the records and of the rules: while both stand, so does every answer that was worked out from them alone.</summary>
/// <param name="Records">Where the chain of records ended.</param>
/// <param name="Families">The families that could be used.</param>
public sealed record Moment(ChainEnd Records, ImmutableArray<LoadedFamily> Families)
{
    /// <summary>Whether nothing was recorded and no rules were exchanged between two moments.</summary>
    public bool IsStill(Moment other) =>
        Records == other.Records && Families.Length == other.Families.Length && Families.Zip(other.Families).All(f => ReferenceEquals(f.First, f.Second));
}
