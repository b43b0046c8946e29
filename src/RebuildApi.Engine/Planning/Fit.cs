using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;

namespace RebuildApi.Engine.Planning;

/// <summary>One way to fill a place: a part, or the pieces of a pack.</summary>
/// <param name="Id">What it is called in the answer.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Parts">The part, or the pieces, each with what is known of it.</param>
internal sealed record Fit(string Id, PartSource Source, ImmutableArray<Candidate> Parts)
{
    public long? Price { get; init; } = 0;

    public int LeadDays { get; init; }

    public string? Vendor { get; init; }

    /// <summary>What is drawn from: name to how many; empty when any number can be had.</summary>
    public ImmutableArray<(string Name, int OnHand)> Draws { get; init; } = [];

    /// <summary>What it came with; parts found came together.</summary>
    public string? Set { get; init; }

    public ImmutableArray<string> Members { get; init; } = [];

    public ImmutableArray<PlanWork> Work { get; init; } = [];

    /// <summary>The fit whose pairings are taken for its own, since it differs in a length alone; the answer is judged again as it stands.</summary>
    public Fit? JudgedAs { get; init; }

    public bool IsOriginal => Source is PartSource.Found or PartSource.Rework;

    public bool IsInHouse => IsOriginal || Source is PartSource.Shelf or PartSource.Core || LeadDays == 0 && Source != PartSource.ToBeBought;
}

/// <summary>A place to fill, with all ways to fill it.</summary>
/// <param name="Position">The position.</param>
/// <param name="Index">Which of several like parts; 1 for a pack, which is chosen as a whole.</param>
/// <param name="Series">The series, when selective pieces go there.</param>
/// <param name="Fits">The ways; empty when nothing can go there.</param>
internal sealed record PlanPlace(Position Position, int Index, string? Series, ImmutableArray<Fit> Fits)
{
    public string Subject => Snapshots.Subjects.Of(Position.Id, Index);
}
