using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>What walking the chain found.</summary>
/// <param name="Entries">How many entries were walked.</param>
/// <param name="Head">Hash of the last; empty when there is none.</param>
/// <param name="FirstBroken">Sequence number of the first entry that does not follow from the one before, or that a table contradicts; or none.</param>
/// <param name="Why">What is wrong with it, in words, or none.</param>
public sealed record ChainReport(long Entries, string Head, long? FirstBroken, string? Why)
{
    /// <summary>Whether every entry follows from the one before and says what is stored.</summary>
    public bool Intact => FirstBroken is null;

    /// <summary>Sequence number of the head that was asked for, when the chain still holds it and is intact up to there; or none.</summary>
    public long? Noted { get; init; }

    /// <summary>What was erased, as far as was walked.</summary>
    public ImmutableArray<ErasureSeen> Erasures { get; init; } = [];
}

/// <summary>An erasure that a walk met.</summary>
/// <param name="Sequence">Its entry.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Actor">By whom: the token's name.</param>
/// <param name="Unit">From which unit.</param>
/// <param name="Entries">The entries whose texts went.</param>
/// <param name="InBody">How many of them had their texts in the body. What else those say is vouched for only from the erasure on.</param>
public sealed record ErasureSeen(long Sequence, DateTimeOffset Time, string Actor, string Unit, ImmutableArray<long> Entries, int InBody);

/// <summary>Where the chain ends.</summary>
/// <param name="Sequence">Number of its last entry; 0 when there is none.</param>
/// <param name="Hash">Hash of it; empty when there is none.</param>
public sealed record ChainEnd(long Sequence, string Hash);

/// <summary>What is asked of a walk over the chain.</summary>
/// <param name="NotedHead">A head that was noted outside, to be found again; or none.</param>
/// <param name="Progress">Told how many of how many entries were walked; or none.</param>
public sealed record ChainQuestion(string? NotedHead = null, IProgress<HowFar>? Progress = null)
{
    /// <summary>Only whether it is intact.</summary>
    public static ChainQuestion Plain { get; } = new();
}

/// <summary>How far something has come.</summary>
/// <param name="Done">How much is done.</param>
/// <param name="All">Of how much.</param>
public readonly record struct HowFar(long Done, long All);
