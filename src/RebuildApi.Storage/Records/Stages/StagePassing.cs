using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>That a unit went from one stage to another: through a gate, back again, or away unrepaired. Never edited.</summary>
/// <param name="Id">Its id; sorts by time.</param>
/// <param name="Unit">The unit.</param>
/// <param name="From">Where it was.</param>
/// <param name="To">Where it went.</param>
/// <param name="Person">Who let it go.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Note">Why, or what was noted, if anything.</param>
/// <param name="Judgement">The judgement that was kept of it then; none where it could not be judged.</param>
/// <param name="Gate">What the gate asked for, and how each was answered; empty when it went through none.</param>
public sealed record StagePassing(
    string Id,
    string Unit,
    string From,
    string To,
    string Person,
    DateTimeOffset Time,
    string? Note,
    string? Judgement,
    ImmutableArray<GateAnswer> Gate) : IShopRecord<StagePassing>
{
    /// <inheritdoc/>
    public static ShopTable<StagePassing> Table { get; } = new("stage", isEdited: false, StoreJson.Default.StagePassing);

    string IShopRecord<StagePassing>.OfUnit => Unit;

    string IShopRecord<StagePassing>.About => To;

    long IShopRecord<StagePassing>.Version => 1;

    StagePassing IShopRecord<StagePassing>.At(long version) => this;
}

/// <summary>How one requirement of a gate was answered.</summary>
/// <param name="Requirement">Which.</param>
/// <param name="State"><c>met</c>, <c>not-available</c>, or <c>excepted</c> over a signature.</param>
/// <param name="Reason">Why it was left out, if it was.</param>
/// <param name="Person">Who signs for that.</param>
/// <param name="Left">What was left open: the subjects, if it was.</param>
public sealed record GateAnswer(string Requirement, string State, string? Reason, string? Person, ImmutableArray<string> Left);
