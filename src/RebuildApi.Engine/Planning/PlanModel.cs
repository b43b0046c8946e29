using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Engine.Planning;

/// <summary>A unit, its candidates and a request as tables and sums, whatever the plan is to be best in.</summary>
internal sealed class PlanModel
{
    private readonly PlanSnapshot _snapshot;
    private readonly Dictionary<int, Fit> _usual;
    private readonly Dictionary<(int Place, string Fit), EstimateBook> _books = [];

    public PlanModel(EstimateBook book, PlanRequest request, IHooks hooks, bool cuts)
    {
        (Book, Request, Hooks) = (book, request, hooks);
        var all = new Places(book, request).All(cuts);
        Places = [.. all.Where(p => !p.Fits.IsEmpty)];
        Empty = [.. all.Where(p => p.Fits.IsEmpty)];
        Money = new PlanMoney(request, Places);
        _snapshot = new PlanSnapshot(book.View);
        _usual = Places.Select((p, i) => (p, i)).ToDictionary(x => x.i, x => x.p.Fits[0]);
        Standings = [.. Places.Select((p, i) => p.Fits.Select(f => Standing.Of(p, f, BookOf(i, f), request.Rates)).ToImmutableArray())];
        Pairings = new PairingTables(Places, book.View, request, Money);
        (Tables, Sums) = ([.. AllTables()], [.. AllSums()]);
        Faults = new PlanFaults(this);
    }

    public EstimateBook Book { get; }

    public PlanRequest Request { get; }

    public IHooks Hooks { get; }

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

    private IEnumerable<PlanTable> AllTables()
    {
        var single = new SingleDemands(this);
        foreach (var table in Places.SelectMany((p, i) => single.Of(p, i)))
            yield return table;
        foreach (var rule in Family.Pairings)
        {
            if (Pairings.Of(rule, Demands.Pairing(rule.Id, rule.Name.In("en"))) is { } table)
                yield return table;
        }

        foreach (var hook in Family.Hooks)
        {
            if (Pairings.Of(hook, Demands.Pairing(hook.Id, hook.Id), Hooks) is { } table)
                yield return table;
        }

        foreach (var table in Family.Sets.SelectMany(s => Pairings.Of(s, Demands.Set(s))))
            yield return table;
    }

    private IEnumerable<PlanSum> AllSums()
    {
        foreach (var loop in Family.Loops)
        {
            if (LoopSums.Of(loop, Demands.Clearance(loop.Id, loop.Name.In("en")), Places, BookOf, Book.View.Snapshot.Policy) is { } sum)
                yield return sum;
        }

        foreach (var sum in StockSums())
            yield return sum;
        if (Request.Limits.MostCost is { } most)
        {
            yield return new PlanSum(Demands.Limit("most-cost", "cost", most), long.MinValue, most,
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
