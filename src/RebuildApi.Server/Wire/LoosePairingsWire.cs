using System.Collections.Immutable;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>Parts that are to run together, whether the shop has them or not.</summary>
/// <param name="Family">Id of the family.</param>
/// <param name="Parts">The parts, each with what is known of it.</param>
public sealed record LoosePairingsRequest([Id] string Family, [Entries(1, 200)] ImmutableArray<LoosePartRequest> Parts);

/// <summary>A part with what is known of it.</summary>
/// <param name="Position">Where it is to sit; the second of several like parts has <c>#2</c> behind it.</param>
/// <param name="Attributes">Attribute to value; what is left out is unknown, and unknown is never good.</param>
/// <param name="Readings">What was read of it.</param>
public sealed record LoosePartRequest(
    [Words(70)] string Position, IReadOnlyDictionary<string, string>? Attributes = null, [Entries(0, 100)] ImmutableArray<LooseReadingRequest>? Readings = null);

/// <summary>A characteristic with its value.</summary>
/// <param name="Characteristic">Which.</param>
/// <param name="Reading">Its value.</param>
public sealed record LooseReadingRequest([Words(64)] string Characteristic, ReadingRequest Reading);

/// <summary>May these parts run together?</summary>
/// <param name="Items">The pairings that the parts take part in.</param>
/// <param name="Rules">Whose rules.</param>
/// <param name="InputsSha256">Hash of what they were made from.</param>
/// <param name="Cautions">What can hurt a person or the gearbox, and what stands before these answers.</param>
public sealed record LoosePairingsWire(ImmutableArray<PairingVerdictWire> Items, RuleWire Rules, string InputsSha256, ImmutableArray<string> Cautions);
