namespace RebuildApi.Engine.Money;

/// <summary>What a customer agreed to, in whole minor units with tax.</summary>
/// <param name="Sum">The sum agreed to.</param>
/// <param name="Share">By which share of it the work may grow without asking again: 0.1 for a tenth. 0 or more.</param>
public sealed record Agreement(long Sum, decimal Share)
{
    /// <summary>The largest sum that needs no new approval: the sum and its share, rounded down so that the customer never pays for rounding.</summary>
    public long Ceiling => decimal.ToInt64(Math.Floor(Sum + (Sum * Share)));

    /// <summary>Whether a sum needs a new approval. Exactly the ceiling does not.</summary>
    public bool NeedsApproval(long sum) => sum > Ceiling;
}
