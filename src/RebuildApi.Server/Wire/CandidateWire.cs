using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>Parts that could go to a place.</summary>
/// <param name="Parts">The parts, each with what is known of it.</param>
public sealed record CandidatesRequest([Entries(1, 200)] ImmutableArray<SpokenPartRequest> Parts);

/// <summary>A part that is only spoken of.</summary>
/// <param name="Label">What the client calls it.</param>
/// <param name="Attributes">Attribute to value; what is left out is unknown, and unknown is never good.</param>
/// <param name="Readings">What was read of it.</param>
public sealed record SpokenPartRequest(
    [Words(100)] string? Label = null, IReadOnlyDictionary<string, string>? Attributes = null, [Entries(0, 100)] ImmutableArray<LooseReadingRequest>? Readings = null);

/// <summary>A part that could go to a place, and how it would run with what is chosen already.</summary>
/// <param name="Component">The part; <c>sent#1</c> for the first that a request speaks of.</param>
/// <param name="Revision">Its revision.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Origin">Where it came from.</param>
/// <param name="Label">What is written on it or its bag.</param>
/// <param name="From">Where it is now; one in another unit is to be asked for first.</param>
/// <param name="Unit">The unit that it is in.</param>
/// <param name="Position">Where it is in that unit.</param>
/// <param name="Role">Found there, or chosen to go there.</param>
/// <param name="Outcome">The worst of its pairings. Only compatible counts as good.</param>
/// <param name="Pairings">Every pairing that the position takes part in.</param>
/// <param name="Settles">What to look at or read so that a doubt goes away.</param>
public sealed record CandidateWire(
    string Component,
    int Revision,
    string Kind,
    Origin Origin,
    string? Label,
    PartFrom From,
    string? Unit,
    string? Position,
    PlacementRole? Role,
    Compatibility Outcome,
    ImmutableArray<PairingOutcomeWire> Pairings,
    ImmutableArray<string> Settles);

/// <summary>What one pairing would say.</summary>
/// <param name="Pairing">Id of the pairing rule.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Outcome">The outcome.</param>
/// <param name="Reasons">Why.</param>
public sealed record PairingOutcomeWire(string Pairing, string Name, Compatibility Outcome, ImmutableArray<ReasonWire> Reasons) : IInWords
{
    /// <summary>From the contract.</summary>
    public static PairingOutcomeWire From(PairingVerdict verdict, FamilyIndex family, Display show) => new(
        verdict.Rule,
        family.Pairings.TryGetValue(verdict.Rule, out var rule) ? show.Words(rule.Name) : verdict.Rule,
        verdict.Outcome,
        [.. verdict.Reasons.Select(r => ReasonWire.From(r, family))]);

    /// <inheritdoc/>
    public string InWords() => $"{Pairing} {Kebab.Of(Outcome)}";
}
