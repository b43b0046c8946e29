using System.Numerics;

namespace RebuildApi.Checkers;

/// <summary>Ranked by the largest smallest margin, then the least distance, pieces, cost and metal removed.</summary>
public sealed record CheckedRank(BigInteger Margin, Fraction Distance, long Pieces, long Cost, long Removed) : IComparable<CheckedRank>
{
    /// <inheritdoc/>
    public int CompareTo(CheckedRank? other)
    {
        ArgumentNullException.ThrowIfNull(other);
        foreach (var difference in new[]
        {
            other.Margin.CompareTo(Margin), Distance.CompareTo(other.Distance), Pieces.CompareTo(other.Pieces), Cost.CompareTo(other.Cost), Removed.CompareTo(other.Removed),
        })
        {
            if (difference != 0)
                return difference;
        }

        return 0;
    }
}
