namespace RebuildApi.Engine.Planning.Solving;

/// <summary>
/// Depth-first branch and bound. At each node options that can't be in a solution are removed, and those that can't be in a better one; then the
/// choice that failed most and has the fewest options left is tried, its cheapest option first.
/// </summary>
internal sealed class Search
{
    /// <summary>Passes at a node; more do not pay.</summary>
    private const int PassesAtNode = 2;

    /// <summary>Passes before the first branch, where the bound serves all that follows.</summary>
    public const int PassesAtRoot = 60;

    private readonly Network _network;
    private readonly Domains _domains;
    private readonly DualBound _dual;
    private readonly int[] _weights;
    private readonly int[] _picks;
    private readonly CancellationToken _cancellation;
    private long _stepsLeft;
    private long _openBound = long.MaxValue;
    private long _bound;

    public Search(Network network, long steps, CancellationToken cancellation)
    {
        (_network, _stepsLeft, _cancellation) = (network, steps, cancellation);
        _domains = new Domains(network.Sizes);
        _dual = new DualBound(network, _domains);
        _weights = [.. network.Sizes.Select(_ => 1)];
        _picks = new int[network.Sizes.Length];
    }

    /// <summary>The best found, or none.</summary>
    public int[]? Best { get; private set; }

    /// <summary>What it costs, in parts; <see cref="Network.Impossible"/> when there is none.</summary>
    public long BestCost { get; private set; } = Network.Impossible;

    /// <summary>Whether a limit stopped it.</summary>
    public bool Stopped { get; private set; }

    public long Steps { get; private set; }

    public Domains Domains => _domains;

    /// <summary>How much less than the best found another solution could cost, in whole units; 0 when it is proven.</summary>
    public long Slack => Stopped ? Math.Max(0, (BestCost - _openBound) / _network.Parts) : 0;

    /// <summary>Removes what can't be in any solution, before the search.</summary>
    /// <returns>False when nothing is left.</returns>
    public bool NarrowRoot()
    {
        RemoveImpossible();
        return Narrow(PassesAtRoot);
    }

    /// <summary>Searches all that is open.</summary>
    public void Run(int passes)
    {
        var mark = _domains.Mark;
        RemoveImpossible();
        while (Narrow(passes))
        {
            if (!Step())
            {
                _openBound = Math.Min(_openBound, _bound);
                break;
            }

            if (Next() is not { } choice)
            {
                Take();
                break;
            }

            Branch(choice);
            passes = PassesAtNode;
        }

        _domains.BackTo(mark);
    }

    /// <summary>Looks at the cheapest option of a choice, and rules it out.</summary>
    private void Branch(int choice)
    {
        var option = Cheapest(choice);
        var mark = _domains.Mark;
        _domains.Assign(choice, option);
        Run(PassesAtNode);
        _domains.BackTo(mark);
        _domains.Remove(choice, option);
    }

    private bool Step()
    {
        if (Stopped || _stepsLeft-- <= 0 || _cancellation.IsCancellationRequested)
            Stopped = true;
        else
            Steps++;
        return !Stopped;
    }

    private void RemoveImpossible()
    {
        for (var choice = 0; choice < _domains.Count; choice++)
        {
            foreach (var option in _domains.Of(choice).ToArray().Where(o => _network.Single[choice][o] >= Network.Impossible))
                _domains.Remove(choice, option);
        }
    }

    /// <summary>Removes options until nothing changes.</summary>
    /// <returns>False when nothing better can be left.</returns>
    private bool Narrow(int passes)
    {
        bool changed;
        do
        {
            changed = false;
            if (AnyEmpty() || !NarrowRows(ref changed))
                return false;
            var wide = 0L;
            foreach (var table in _network.Wide)
                wide += table.Narrow(_domains, ref changed);
            if (wide >= Network.Impossible || AnyEmpty())
                return false;
            if (!Tighten(passes, wide, ref changed))
                return false;
            passes = PassesAtNode;
        }
        while (changed);
        return true;
    }

    private bool Tighten(int passes, long wide, ref bool changed)
    {
        for (var pass = 0; pass < passes; pass++)
        {
            if (!_dual.Pass(ref changed))
            {
                Blame();
                return false;
            }

            var bound = wide + _dual.Evaluate();
            var grew = pass == 0 || bound > _bound;
            _bound = bound;
            if (bound > BestCost - _network.Parts)
                return false;
            if (!grew)
                break;
        }

        RemoveTooDear(ref changed);
        return true;
    }

    /// <summary>An option that costs more than its choice's cheapest by what separates the bound from the best found can't be in a better one.</summary>
    private void RemoveTooDear(ref bool changed)
    {
        if (Best is null)
            return;
        var room = BestCost - _network.Parts - _bound;
        for (var choice = 0; choice < _domains.Count; choice++)
        {
            if (_domains.Size(choice) == 1)
                continue;
            var least = _dual.TotalOf(choice, Cheapest(choice));
            for (var i = _domains.Size(choice) - 1; i >= 0; i--)
            {
                var option = _domains.Of(choice)[i];
                if (_dual.TotalOf(choice, option) - least <= room)
                    continue;
                _domains.Remove(choice, option);
                changed = true;
            }
        }
    }

    private bool NarrowRows(ref bool changed)
    {
        foreach (var row in _network.Rows)
        {
            if (row.Narrow(_domains, ref changed))
                continue;
            foreach (var choice in row.Choices)
                _weights[choice]++;
            return false;
        }

        return true;
    }

    private void Blame()
    {
        if (_dual.FailedPair < 0)
            return;
        _weights[_network.Pairs[_dual.FailedPair].First]++;
        _weights[_network.Pairs[_dual.FailedPair].Second]++;
    }

    private bool AnyEmpty()
    {
        for (var choice = 0; choice < _domains.Count; choice++)
        {
            if (_domains.Size(choice) == 0)
                return true;
        }

        return false;
    }

    /// <summary>The choice to branch on: fewest options for its weight; none when all are decided.</summary>
    private int? Next()
    {
        int? best = null;
        for (var choice = 0; choice < _domains.Count; choice++)
        {
            if (_domains.Size(choice) > 1 && (best is not { } b || (long)_domains.Size(choice) * _weights[b] < (long)_domains.Size(b) * _weights[choice]))
                best = choice;
        }

        return best;
    }

    private int Cheapest(int choice)
    {
        var best = _domains.Of(choice)[0];
        foreach (var option in _domains.Of(choice))
        {
            if ((_dual.TotalOf(choice, option), option).CompareTo((_dual.TotalOf(choice, best), best)) < 0)
                best = option;
        }

        return best;
    }

    /// <summary>Everything is decided: weighs it once more, plainly, and keeps it when it is better.</summary>
    private void Take()
    {
        for (var choice = 0; choice < _picks.Length; choice++)
            _picks[choice] = _domains.Of(choice)[0];
        var cost = 0L;
        for (var choice = 0; choice < _picks.Length; choice++)
            cost += _network.Single[choice][_picks[choice]];
        foreach (var pair in _network.Pairs)
            cost += pair.Costs[(_picks[pair.First] * pair.Columns) + _picks[pair.Second]];
        foreach (var table in _network.Wide)
            cost += table.CostOf(_picks);
        if (cost < BestCost && _network.Rows.All(r => r.Holds(_picks)))
            (Best, BestCost) = ((int[])_picks.Clone(), cost);
    }
}
