namespace RebuildApi.Engine.Allocation;

/// <summary>
/// Which units to complete when not all can be: depth first, each unit taken or left, those with the fewest offers last to be given up. No more units can
/// follow than the smallest of the groups' matchings; no less cost than what is taken costs by itself and the cheapest offers of the rest.
/// </summary>
internal sealed class UnitSearch(AllocationProblem problem, NeedGroups groups, long steps, CancellationToken cancellation)
{
    private readonly int[] _order = [.. Enumerable.Range(0, problem.Units.Length).OrderBy(u => CheapestOf(groups, u) ?? long.MaxValue).ThenBy(u => u)];
    private readonly long?[] _cheapest = [.. Enumerable.Range(0, problem.Units.Length).Select(u => CheapestOf(groups, u))];
    private readonly List<int> _taken = [];
    private Assigned _best = new([], 0);
    private int[] _bestUnits = [];
    private bool _stopped;
    private int _openUnits;
    private long _openCost = long.MaxValue;

    /// <summary>The best way, with how far another may be from it.</summary>
    public AllocationFound Run()
    {
        Start();
        Look(0, new Assigned([], 0));
        var most = _stopped ? Math.Max(_bestUnits.Length, _openUnits) : _bestUnits.Length;
        var least = _stopped ? Math.Min(_best.Cost, _openCost) : _best.Cost;
        return new AllocationFound(_bestUnits, _best, most, least);
    }

    /// <summary>A first way to hold others against: units as long as they fit, then one given up wherever two others come in for it.</summary>
    private void Start()
    {
        var units = Extended([], _order);
        while (Exchanged(units) is { } more)
            units = more;
        (_best, _bestUnits) = (groups.Assign(units)!, [.. units]);
    }

    private List<int>? Exchanged(List<int> units) => units
        .SelectMany(given => new[] { _order, [.. _order.Reverse()] }.Select(order => Extended(units.Where(u => u != given), order.Where(u => u != given).Append(given))))
        .FirstOrDefault(e => e.Count > units.Count);

    private List<int> Extended(IEnumerable<int> units, IEnumerable<int> order)
    {
        var so = units.ToList();
        foreach (var unit in order.Where(u => _cheapest[u] is not null && !so.Contains(u)))
        {
            if (groups.Assign([.. so, unit]) is not null)
                so.Add(unit);
        }

        return so;
    }

    private void Look(int depth, Assigned taken)
    {
        if (IsBetter(taken))
            (_best, _bestUnits) = (taken, [.. _taken]);
        if (depth == _order.Length)
            return;
        var most = MostFrom(depth);
        var least = taken.Cost + Rest(depth, Math.Max(0, Math.Min(most, _bestUnits.Length) - _taken.Count));
        if (most < _bestUnits.Length || (most == _bestUnits.Length && least >= _best.Cost))
            return;
        if (_stopped || steps-- <= 0 || cancellation.IsCancellationRequested)
        {
            _stopped = true;
            (_openUnits, _openCost) = (Math.Max(_openUnits, most), Math.Min(_openCost, least));
            return;
        }

        var unit = _order[depth];
        if (_cheapest[unit] is not null && groups.Assign([.. _taken, unit]) is { } more)
        {
            _taken.Add(unit);
            Look(depth + 1, more);
            _taken.RemoveAt(_taken.Count - 1);
        }

        Look(depth + 1, taken);
    }

    private bool IsBetter(Assigned taken) => _taken.Count > _bestUnits.Length || (_taken.Count == _bestUnits.Length && taken.Cost < _best.Cost);

    private int MostFrom(int depth) => groups.MostOf([.. _taken, .. _order.Skip(depth).Where(u => _cheapest[u] is not null)]);

    private long Rest(int depth, int units) => _order.Skip(depth).Select(u => _cheapest[u]).OfType<long>().Order().Take(units).Sum();

    /// <summary>The cheapest offers of a unit as if it were alone; none when a place has no offer.</summary>
    private static long? CheapestOf(NeedGroups groups, int unit)
    {
        var needs = groups.NeedsOf(unit).ToArray();
        return needs.Any(n => n.Offers.Length == 0) ? null : needs.Sum(n => n.Offers.Min(o => o.Cost));
    }
}
