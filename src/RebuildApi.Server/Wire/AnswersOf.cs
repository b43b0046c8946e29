using System.Collections.Immutable;

namespace RebuildApi.Server.Wire;

/// <summary>Answers about one unit, with whose rules and which inputs they were made from.</summary>
/// <param name="Items">The answers.</param>
/// <param name="Next">The whole address of the next page; absent on the last.</param>
/// <param name="AsOf">When they were worked out, UTC.</param>
/// <param name="Unit">The unit.</param>
/// <param name="UnitVersion">Its version.</param>
/// <param name="Rules">Whose rules; absent when they are not loaded.</param>
/// <param name="InputsSha256">Hash of what they were made from.</param>
/// <param name="Outcomes">How many answers of each outcome there are in all.</param>
/// <param name="Cautions">What can hurt a person or the gearbox, and what stands before these answers.</param>
public record AnswersOf<T>(
    ImmutableArray<T> Items,
    string? Next,
    DateTimeOffset AsOf,
    string Unit,
    long UnitVersion,
    RuleWire? Rules,
    string InputsSha256,
    IReadOnlyDictionary<string, int> Outcomes,
    ImmutableArray<string> Cautions) : ListOf<T>(Items, Next, AsOf)
{
    /// <summary>Which edition of the shop's policy they were made under; <c>default</c> until the shop signs one of its own.</summary>
    public string Policy { get; init; } = "default";
}
