using System.Collections.Immutable;

namespace RebuildApi.Engine.Allocation;

/// <summary>Needs that compete for parts, apart from those that do not. Reservations are taken in: a reserved part is offered to its unit alone.</summary>
internal sealed class NeedGroups
{
    private readonly AllocationProblem _problem;
    private readonly (int Unit, string Place, AllocationOffer[] Offers)[] _needs;
    private readonly ImmutableArray<Group> _groups;

    public NeedGroups(AllocationProblem problem)
    {
        _problem = problem;
        var parts = problem.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        var offers = problem.Offers.Where(o => parts[o.Part].ReservedFor is null || parts[o.Part].ReservedFor == o.Unit).ToLookup(o => (o.Unit, o.Place));
        _needs = [.. problem.Units.SelectMany((u, i) => u.Needs.Select(n => (i, n, offers[(u.Id, n)].ToArray())))];
        HasSets = problem.Parts.Where(p => p.Set is not null).GroupBy(p => p.Set, StringComparer.Ordinal).Any(g => g.Count() > 1);
        _groups = [.. Separate().Select(g => new Group(g, _needs))];
    }

    /// <summary>Whether parts must stay together.</summary>
    public bool HasSets { get; }

    /// <summary>The needs of a unit with what is offered for each.</summary>
    public IEnumerable<(string Place, AllocationOffer[] Offers)> NeedsOf(int unit) => _needs.Where(n => n.Unit == unit).Select(n => (n.Place, n.Offers));

    /// <summary>The cheapest way to complete all of some units; none when they can't all be.</summary>
    public Assigned? Assign(IReadOnlyCollection<int> units)
    {
        var wanted = units.ToHashSet();
        var offers = ImmutableArray.CreateBuilder<AllocationOffer>();
        foreach (var group in _groups)
        {
            if (group.Assign(wanted) is not { } chosen)
                return null;
            offers.AddRange(chosen);
        }

        return new Assigned(offers.ToImmutable(), offers.Sum(o => o.Cost));
    }

    /// <summary>No more of some units than this can be completed: of each group, no more needs are met than can be matched at all.</summary>
    public int MostOf(IReadOnlyCollection<int> units) => _groups.Select(g => g.MostOf(units)).DefaultIfEmpty(units.Count).Min();

    /// <summary>Places of a unit that stay empty with what is left over, the fewest.</summary>
    public ImmutableArray<string> Lacking(int unit, HashSet<string> used)
    {
        var needs = _needs.Where(n => n.Unit == unit).Select(n => (n.Place, Parts: n.Offers.Select(o => o.Part).Where(p => !used.Contains(p)).ToArray())).ToArray();
        var taken = new Dictionary<string, int>(StringComparer.Ordinal);
        return [.. needs.Select((n, i) => (n.Place, i)).Where(x => !Match(x.i, [])).Select(x => x.Place)];

        bool Match(int need, HashSet<string> tried) => needs[need].Parts.Any(p => tried.Add(p) && (!taken.TryGetValue(p, out var other) || Match(other, tried)) && (taken[p] = need) == need);
    }

    private IEnumerable<int[]> Separate()
    {
        var group = Enumerable.Range(0, _needs.Length).ToArray();
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var need = 0; need < _needs.Length; need++)
        {
            foreach (var offer in _needs[need].Offers)
            {
                if (!first.TryAdd(offer.Part, need))
                    group[Root(group, need)] = Root(group, first[offer.Part]);
            }
        }

        return Enumerable.Range(0, _needs.Length).GroupBy(n => Root(group, n)).Select(g => g.ToArray());
    }

    private static int Root(int[] group, int need)
    {
        while (group[need] != need)
            need = group[need] = group[group[need]];
        return need;
    }

    /// <summary>Needs that compete, with their costs as a matrix.</summary>
    private sealed class Group
    {
        private readonly (int Unit, AllocationOffer[] Offers)[] _rows;
        private readonly long[][] _costs;
        private readonly AllocationOffer?[][] _offers;

        public Group(int[] needs, (int Unit, string Place, AllocationOffer[] Offers)[] all)
        {
            _rows = [.. needs.Select(n => (all[n].Unit, all[n].Offers))];
            var columns = _rows.SelectMany(r => r.Offers).Select(o => o.Part).Distinct(StringComparer.Ordinal).Select((p, i) => (p, i)).ToDictionary(x => x.p, x => x.i, StringComparer.Ordinal);
            _costs = [.. _rows.Select(_ => Enumerable.Repeat(Assignment.Forbidden, columns.Count).ToArray())];
            _offers = [.. _rows.Select(_ => new AllocationOffer?[columns.Count])];
            for (var row = 0; row < _rows.Length; row++)
            {
                foreach (var offer in _rows[row].Offers)
                    (_costs[row][columns[offer.Part]], _offers[row][columns[offer.Part]]) = (offer.Cost, offer);
            }
        }

        public AllocationOffer[]? Assign(HashSet<int> units)
        {
            var rows = Enumerable.Range(0, _rows.Length).Where(r => units.Contains(_rows[r].Unit)).ToArray();
            return Assignment.Solve([.. rows.Select(r => _costs[r])]) is { } columns ? [.. rows.Zip(columns, (r, c) => _offers[r][c]!)] : null;
        }

        /// <summary>The units with the fewest needs here first, as many as the largest matching has needs for.</summary>
        public int MostOf(IReadOnlyCollection<int> units)
        {
            var matched = Matching([.. Enumerable.Range(0, _rows.Length).Where(r => units.Contains(_rows[r].Unit))]);
            var needs = units.Select(u => _rows.Count(r => r.Unit == u)).Order();
            return needs.Select(n => matched -= n).TakeWhile(left => left >= 0).Count();
        }

        private int Matching(int[] rows)
        {
            var rowOf = Enumerable.Repeat(-1, _costs[0].Length).ToArray();
            return rows.Count(r => Match(r, new bool[rowOf.Length]));

            bool Match(int row, bool[] tried)
            {
                for (var column = 0; column < rowOf.Length; column++)
                {
                    if (_costs[row][column] == Assignment.Forbidden || tried[column])
                        continue;
                    tried[column] = true;
                    if (rowOf[column] >= 0 && !Match(rowOf[column], tried))
                        continue;
                    rowOf[column] = row;
                    return true;
                }

                return false;
            }
        }
    }
}
