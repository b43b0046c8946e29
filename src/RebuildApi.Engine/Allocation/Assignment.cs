using System.Collections.Immutable;

namespace RebuildApi.Engine.Allocation;

/// <summary>
/// Gives each row a column of its own at the least total cost: shortest augmenting paths with potentials (Jonker and Volgenant, Computing 38, 1987, for
/// rectangular costs as Crouse, IEEE Transactions on Aerospace and Electronic Systems 52, 2016). Exact in whole numbers; n rows and m columns take
/// about n² · m steps at the worst.
/// </summary>
public static class Assignment
{
    /// <summary>A column that a row may not have.</summary>
    public const long Forbidden = long.MaxValue;

    private const long Far = long.MaxValue / 4;

    /// <summary>The cheapest column for each row.</summary>
    /// <param name="costs">One row each; all of one length, no shorter than there are rows. Costs up to 10¹⁵ either way, or <see cref="Forbidden"/>.</param>
    /// <returns>The column of each row; none when not every row can have one.</returns>
    /// <exception cref="ArgumentException">Rows differ in length, or a cost is out of range.</exception>
    public static ImmutableArray<int>? Solve(IReadOnlyList<long[]> costs)
    {
        ArgumentNullException.ThrowIfNull(costs);
        var columns = costs.Count == 0 ? 0 : costs[0].Length;
        if (costs.Any(r => r.Length != columns || r.Any(c => c != Forbidden && Math.Abs((decimal)c) > 1_000_000_000_000_000)))
            throw new ArgumentException("costs: rows of one length, no cost above 10^15.", nameof(costs));
        if (columns < costs.Count)
            return null;
        var state = new State(costs, columns);
        for (var row = 0; row < costs.Count; row++)
        {
            if (!state.Augment(row))
                return null;
        }

        return [.. state.ColumnOf];
    }

    /// <summary>What the columns cost together.</summary>
    public static long Cost(IReadOnlyList<long[]> costs, ImmutableArray<int> columns) => columns.Select((c, r) => costs[r][c]).Sum();

    /// <summary>The potentials, and who has what so far.</summary>
    private sealed class State(IReadOnlyList<long[]> costs, int columns)
    {
        private readonly long[] _rowPrice = new long[costs.Count];
        private readonly long[] _columnPrice = new long[columns];
        private readonly int[] _rowOf = [.. Enumerable.Repeat(-1, columns)];
        private readonly long[] _shortest = new long[columns];
        private readonly int[] _from = new int[columns];
        private readonly bool[] _isDone = new bool[columns];
        private readonly List<int> _done = [];

        public int[] ColumnOf { get; } = [.. Enumerable.Repeat(-1, costs.Count)];

        public bool Augment(int row)
        {
            Array.Fill(_shortest, Far);
            Array.Clear(_isDone);
            _done.Clear();
            var (at, length, end) = (row, 0L, -1);
            while (end < 0)
            {
                if (Nearest(at, length) is not { } next)
                    return false;
                length = _shortest[next];
                _isDone[next] = true;
                _done.Add(next);
                if (_rowOf[next] < 0)
                    end = next;
                else
                    at = _rowOf[next];
            }

            Reprice(row, length);
            Turn(row, end);
            return true;
        }

        /// <summary>The column that is nearest by a path over what is known now.</summary>
        private int? Nearest(int row, long length)
        {
            var (best, least) = (-1, Far);
            var (mine, price) = (costs[row], length - _rowPrice[row]);
            for (var column = 0; column < mine.Length; column++)
            {
                if (_isDone[column])
                    continue;
                if (mine[column] != Forbidden && price + mine[column] - _columnPrice[column] is var path && path < _shortest[column])
                    (_shortest[column], _from[column]) = (path, row);
                if (_shortest[column] < least || (_shortest[column] == least && best >= 0 && _rowOf[column] < 0 && _rowOf[best] >= 0))
                    (best, least) = (column, _shortest[column]);
            }

            return best < 0 ? null : best;
        }

        private void Reprice(int row, long length)
        {
            _rowPrice[row] += length;
            foreach (var column in _done)
            {
                if (_rowOf[column] >= 0)
                    _rowPrice[_rowOf[column]] += length - _shortest[column];
                _columnPrice[column] -= length - _shortest[column];
            }
        }

        private void Turn(int row, int end)
        {
            for (var column = end; ;)
            {
                var from = _from[column];
                _rowOf[column] = from;
                (ColumnOf[from], column) = (column, ColumnOf[from]);
                if (from == row)
                    return;
            }
        }
    }
}
