using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Engine.Planning;

/// <summary>A unit, its candidates and a request as tables and sums, whatever the plan is to be best in.</summary>
internal sealed class PlanModel
{
    private readonly PlanSnapshot _snapshot;
    private readonly Dictionary<int, Fit> _usual;
    private readonly Dictionary<(int Place, string Fit), EstimateBook> _books = [];
    private readonly PlanModel? _before;
    private readonly string? _read;

    /// <summary>Works a request out.</summary>
    /// <param name="book">What is known of the unit.</param>
    /// <param name="request">What is asked.</param>
    /// <param name="hooks">The family's rules in code.</param>
    /// <param name="cuts">Whether the parts found may be cut to bring clearances right.</param>
    /// <param name="before">The same unit under another request: what was worked out there over places that are filled alike is taken over.</param>
    /// <param name="read">The position of which something else is read than before; nothing that looks at it is taken over.</param>
    public PlanModel(EstimateBook book, PlanRequest request, IHooks hooks, bool cuts, PlanModel? before = null, string? read = null)
    {
        _read = read;
        (Book, Request, Hooks, Cuts) = (book, request, hooks, cuts);
        var all = new Places(book, request).All(cuts);
        Places = [.. all.Where(p => !p.Fits.IsEmpty)];
        _before = before is not null && before.Places.Select(p => p.Subject).SequenceEqual(Places.Select(p => p.Subject)) ? before : null;
        Empty = [.. all.Where(p => p.Fits.IsEmpty)];
        Money = new PlanMoney(request, Places);
        _snapshot = new PlanSnapshot(book.View);
        _usual = Places.Select((p, i) => (p, i)).ToDictionary(x => x.i, x => x.p.Fits[0]);
        Standings = [.. Places.Select((p, i) => IsAsBefore(p.Position.Id.Equals) ? _before!.Standings[i] : [.. p.Fits.Select(f => Standing.Of(p, f, BookOf(i, f), request.Rates))])];
        Pairings = new PairingTables(Places, book.View, request, Money);
        (Tables, Sums) = ([.. AllTables()], [.. AllSums()]);
        Faults = new PlanFaults(this);
    }

    public EstimateBook Book { get; }

    public PlanRequest Request { get; }

    public IHooks Hooks { get; }

    /// <summary>Whether the parts found may be cut.</summary>
    public bool Cuts { get; }

    public ImmutableArray<PlanPlace> Places { get; }

    /// <summary>Places for which there is nothing at all.</summary>
    public ImmutableArray<PlanPlace> Empty { get; }

    public PlanMoney Money { get; }

    public Demands Demands { get; } = new();

    public PairingTables Pairings { get; }

    public PlanFaults Faults { get; }

    public ImmutableArray<ImmutableArray<Standing>> Standings { get; }

    /// <summary>What combinations cost in expected comebacks, or that they may not be.</summary>
    public ImmutableArray<PlanTable> Tables { get; }

    public ImmutableArray<PlanSum> Sums { get; }

    /// <summary>The family's operations that every rebuild needs, whatever is chosen.</summary>
    public IEnumerable<Operation> BenchWork => Family.Operations.Where(o => o.Effects.IsEmpty && o.Mends.IsEmpty);

    /// <summary>What that work costs, minor units.</summary>
    public long BenchLabour => BenchWork.Sum(o => Money.LabourOf(o.Minutes));

    private Family Family => Book.View.Family.Family;

    /// <summary>The unit with one fit taken for each place.</summary>
    public UnitSnapshot SnapshotOf(IReadOnlyList<int> picks) => _snapshot.Of(Places.Select((p, i) => (p, p.Fits[picks[i]])));

    public EstimateBook BookOf(IReadOnlyDictionary<int, Fit> some) => _snapshot.Book(Places.Select((p, i) => (p, some.GetValueOrDefault(i) ?? _usual[i])));

    public long RiskOf(int place, int fit) => Money.Expected(1 - Standings[place][fit].ChanceGood);

    public long MoneyOf(int place, int fit) => Money.PriceOf(Places[place].Fits[fit]) + Money.LabourOf(Places[place].Fits[fit].Work);

    public EstimateBook BookOf(int place, Fit fit) =>
        _books.TryGetValue((place, fit.Id), out var known) ? known : _books[(place, fit.Id)] = BookOf(new Dictionary<int, Fit> { [place] = fit });

    /// <summary>Whether some positions, and all that what is derived there is worked out from, can be filled in the very ways that they could be before.</summary>
    private bool IsAsBefore(Func<string, bool> positions)
    {
        if (_before is null)
            return false;
        var read = Reading.Of(Places.Select(p => p.Position.Id).Where(positions), Book.View.Family);
        return (_read is null || !read.Contains(_read)) && Enumerable.Range(0, Places.Length).Where(i => read.Contains(Places[i].Position.Id))
            .All(i => Places[i].Fits.Select(f => f.Id).SequenceEqual(_before.Places[i].Fits.Select(f => f.Id)));
    }

    /// <summary>What was worked out of a demand before, if all that it looks at is as it was.</summary>
    private T? Before<T>(string demand, Func<string, bool> looksAt, Func<PlanModel, IEnumerable<(string Demand, T Item)>> all)
        where T : class => IsAsBefore(looksAt)
            ? all(_before!).FirstOrDefault(x => x.Demand == demand).Item
            : null;

    private PlanTable? Before(string demand, Func<string, bool> looksAt) => Before(demand, looksAt, m => m.Tables.Select(t => (t.Demand, t)));

    private IEnumerable<PlanTable> AllTables()
    {
        var single = new SingleDemands(this);
        foreach (var table in Places.SelectMany((p, i) => single.Of(p, i)))
            yield return table;
        foreach (var rule in Family.Pairings)
        {
            var demand = Demands.Pairing(rule.Id, rule.Name.In("en"));
            if ((Before(demand, p => rule.Touches(p, Family)) ?? Pairings.Of(rule, demand)) is { } table)
                yield return table;
        }

        foreach (var hook in Family.Hooks)
        {
            var demand = Demands.Pairing(hook.Id, hook.Id);
            if ((Before(demand, hook.Positions.Contains) ?? Pairings.Of(hook, demand, Hooks)) is { } table)
                yield return table;
        }

        foreach (var table in Family.Sets.SelectMany(s => Pairings.Of(s, Demands.Set(s))))
            yield return table;
    }

    private IEnumerable<PlanSum> AllSums()
    {
        foreach (var loop in Family.Loops)
        {
            var demand = Demands.Clearance(loop.Id, loop.Name.In("en"));
            if ((Before(demand, LoopSums.PositionsOf(loop).Contains, m => m.Sums.Select(s => (s.Demand, s))) ?? LoopSums.Of(loop, demand, Places, BookOf, Book.View.Snapshot.Policy)) is { } sum)
                yield return sum;
        }

        foreach (var sum in StockSums())
            yield return sum;
        if (Request.Limits.MostCost is { } most)
        {
            yield return new PlanSum(Demands.Limit("most-cost", "cost", Request.Said(most)), long.MinValue, most,
                [.. Places.Select((p, i) => new PlanTerm(i, [.. p.Fits.Select((_, f) => (long?)MoneyOf(i, f))], []))]);
        }
    }

    /// <summary>What is drawn from, where more places could draw than there is.</summary>
    private IEnumerable<PlanSum> StockSums()
    {
        foreach (var stock in Places.SelectMany((p, i) => p.Fits.SelectMany((f, o) => f.Draws.Select(d => (d.Name, d.OnHand, Place: i, Fit: o)))).GroupBy(x => x.Name, StringComparer.Ordinal))
        {
            var onHand = stock.First().OnHand;
            var terms = stock.GroupBy(x => x.Place).Select(g => new PlanTerm(
                g.Key, [.. Places[g.Key].Fits.Select(f => (long?)(f.Members.IsEmpty ? f.Draws.Count(d => d.Name == stock.Key) : f.Members.Count(m => stock.Key.EndsWith("/" + m, StringComparison.Ordinal))))], [])).ToImmutableArray();
            if (terms.Sum(t => t.Amounts.Max()) > onHand)
                yield return new PlanSum(Demands.Stock(stock.Key, onHand), long.MinValue, onHand, terms);
        }
    }
}
