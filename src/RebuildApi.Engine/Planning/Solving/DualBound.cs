namespace RebuildApi.Engine.Planning.Solving;

/// <summary>
/// A lower bound on what the tables over one and two choices must cost. Costs are moved between tables and options, by which the sum of every complete
/// choice stays the same, so that the sum of the least of each grows (sequential reweighted message passing, Kolmogorov, IEEE TPAMI 37, 2015, in whole
/// numbers). Any such moving is valid under any open options, so nothing is taken back when the search goes back.
/// </summary>
internal sealed class DualBound
{
    private readonly Network _network;
    private readonly Domains _domains;
    private readonly Side[][] _sides;
    private readonly long[][] _moved;
    private readonly long[][] _totals;
    private readonly long[] _leastOfPair;

    public DualBound(Network network, Domains domains)
    {
        (_network, _domains) = (network, domains);
        _moved = [.. network.Pairs.SelectMany(p => new[] { new long[network.Sizes[p.First]], new long[network.Sizes[p.Second]] })];
        _totals = [.. network.Sizes.Select(s => new long[s])];
        _leastOfPair = new long[network.Pairs.Length];
        var sides = network.Pairs.SelectMany((p, e) => new[] { new Side(e, p.First, p.Second, 2 * e, p.Columns, 1), new Side(e, p.Second, p.First, (2 * e) + 1, 1, p.Columns) });
        var byChoice = sides.ToLookup(s => s.Of);
        _sides = [.. network.Sizes.Select((_, c) => byChoice[c].ToArray())];
    }

    /// <summary>Choice whose options all went last time, and the pair that took the last; for the order of the search.</summary>
    public int FailedPair { get; private set; } = -1;

    /// <summary>One pass over all choices each way.</summary>
    /// <returns>False when a choice has no option left.</returns>
    public bool Pass(ref bool changed)
    {
        for (var choice = 0; choice < _sides.Length; choice++)
        {
            if (!Visit(choice, forward: true, ref changed))
                return false;
        }

        for (var choice = _sides.Length - 1; choice >= 0; choice--)
        {
            if (!Visit(choice, forward: false, ref changed))
                return false;
        }

        return true;
    }

    /// <summary>The bound with what has been moved so far, in parts; and the totals of all options.</summary>
    public long Evaluate()
    {
        var bound = 0L;
        for (var e = 0; e < _network.Pairs.Length; e++)
            bound += _leastOfPair[e] = LeastOf(e);
        for (var choice = 0; choice < _sides.Length; choice++)
            bound += Total(choice);
        return bound;
    }

    /// <summary>What an option costs with what was moved to it.</summary>
    public long TotalOf(int choice, int option) => _totals[choice][option];

    private bool Visit(int choice, bool forward, ref bool changed)
    {
        foreach (var side in _sides[choice])
        {
            if (!Gather(side, ref changed))
                return false;
        }

        var least = Total(choice);
        if (least >= Network.Impossible)
            return false;
        var after = _sides[choice].Count(s => s.Other > choice == forward);
        if (after > 0)
            Spread(choice, forward, least, Math.Max(after, _sides[choice].Length - after));
        return true;
    }

    /// <summary>Moves to each option the least that the pair costs with it; an option for which the pair forbids everything is removed.</summary>
    private bool Gather(Side side, ref bool changed)
    {
        var costs = _network.Pairs[side.Pair].Costs;
        var (mine, others) = (_moved[side.Moved], _moved[side.Moved ^ 1]);
        var open = _domains.Of(side.Other);
        for (var i = _domains.Size(side.Of) - 1; i >= 0; i--)
        {
            var option = _domains.Of(side.Of)[i];
            var (row, least) = (option * side.OwnStride, long.MaxValue);
            foreach (var other in open)
                least = Math.Min(least, costs[row + (other * side.OtherStride)] - others[other]);
            if (least < Network.Impossible / 2)
            {
                mine[option] = least;
                continue;
            }

            _domains.Remove(side.Of, option);
            changed = true;
        }

        if (_domains.Size(side.Of) > 0)
            return true;
        FailedPair = side.Pair;
        return false;
    }

    private long Total(int choice)
    {
        var least = Network.Impossible;
        foreach (var option in _domains.Of(choice))
        {
            var total = _network.Single[choice][option];
            foreach (var side in _sides[choice])
                total += _moved[side.Moved][option];
            _totals[choice][option] = total;
            least = Math.Min(least, total);
        }

        return least;
    }

    private void Spread(int choice, bool forward, long least, int ways)
    {
        foreach (var option in _domains.Of(choice))
        {
            var share = (_totals[choice][option] - least) / ways;
            foreach (var side in _sides[choice])
            {
                if (side.Other > choice == forward)
                    _moved[side.Moved][option] -= share;
            }
        }
    }

    private long LeastOf(int pair)
    {
        var table = _network.Pairs[pair];
        var (first, second) = (_moved[2 * pair], _moved[(2 * pair) + 1]);
        var least = long.MaxValue;
        foreach (var row in _domains.Of(table.First))
        {
            foreach (var column in _domains.Of(table.Second))
                least = Math.Min(least, table.Costs[(row * table.Columns) + column] - first[row] - second[column]);
        }

        return least;
    }

    /// <summary>One choice's side of a pair.</summary>
    private readonly record struct Side(int Pair, int Of, int Other, int Moved, int OwnStride, int OtherStride);
}
