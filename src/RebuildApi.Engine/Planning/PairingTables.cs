using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Planning;

/// <summary>What each pairing, set and hook says of every combination of the ways to fill the places that it looks at.</summary>
internal sealed class PairingTables(ImmutableArray<PlanPlace> places, UnitView view, PlanRequest request, PlanMoney money)
{
    /// <summary>Most combinations that one rule is judged for; with more it is not tabulated, and the plan that comes out is judged by it instead.</summary>
    public const int MostOfRule = 4000;

    /// <summary>The same for a rule in code, each call of which goes to another process.</summary>
    public const int MostOfHook = 256;

    private readonly ImmutableArray<ImmutableArray<Fit>> _judged = [.. places.Select(p => p.Fits.Select(f => f.JudgedAs ?? f).Distinct().ToImmutableArray())];

    /// <summary>The table of one rule, or none when it looks at no place or at too many combinations.</summary>
    public PlanTable? Of(PairingRule rule, string demand) =>
        Table(demand, PlacesOf(p => rule.Touches(p, view.Family.Family)), MostOfRule, Reading.Of(PositionsOf(p => rule.Touches(p, view.Family.Family)), view.Family), b => PairingJudge.Outcome(rule, b));

    /// <summary>The table of one rule in code.</summary>
    public PlanTable? Of(HookScope hook, string demand, IHooks hooks) =>
        Table(demand, PlacesOf(hook.Positions.Contains), MostOfHook, null, b => WorstOf(hooks.Run(hook, b.View.Snapshot)));

    /// <summary>Whether parts of a set came together: all were found here, all are exchanged and, for the same individuals, came as one set.</summary>
    public IEnumerable<PlanTable> Of(MatchedSet set, string demand)
    {
        var members = PlacesOf(set.Positions.Contains);
        for (var i = 1; i < members.Length; i++)
        {
            var (first, second) = (places[members[0]], places[members[i]]);
            yield return new PlanTable(demand, [members[0], members[i]],
                [.. first.Fits.SelectMany(a => second.Fits.Select(b => StayTogether(a, b, set.Bond) ? 0 : PlanTable.Forbidden))]);
        }
    }

    /// <summary>What the outcome of a pairing costs, minor units.</summary>
    public long CostOf(Compatibility outcome) => outcome switch
    {
        Compatibility.Compatible => 0,
        Compatibility.Conditional when request.Limits.AcceptConditional => money.Expected(request.Rates.ConditionalRisk),
        Compatibility.NotAssessed => money.Expected(request.Rates.OpenPairingRisk),
        _ => PlanTable.Forbidden,
    };

    private static bool StayTogether(Fit a, Fit b, SetBond bond)
    {
        var (aIsHere, bIsHere) = (a.Set == Places.FoundId, b.Set == Places.FoundId);
        return aIsHere == bIsHere && (aIsHere || bond == SetBond.ReplaceTogether || (a.Set == b.Set && (a.Set is not null || (IsOfSet(a) && IsOfSet(b)))));
    }

    private static bool IsOfSet(Fit fit) => fit.Parts.All(p => p.Component.Attributes.GetValueOrDefault("supplied") == "as-set");

    private IEnumerable<string> PositionsOf(Func<string, bool> touches) => PlacesOf(touches).Select(i => places[i].Position.Id);

    private int[] PlacesOf(Func<string, bool> touches) => [.. Enumerable.Range(0, places.Length).Where(i => touches(places[i].Position.Id))];

    private PlanTable? Table(string demand, int[] scope, int most, ImmutableHashSet<string>? reads, Func<EstimateBook, Compatibility> judge)
    {
        if (scope.Length == 0 || scope.Aggregate(1.0, (n, p) => n * _judged[p].Length) > most || scope.Aggregate(1.0, (n, p) => n * places[p].Fits.Length) > 1 << 20)
            return null;
        var known = new Dictionary<string, long>(StringComparer.Ordinal);
        var snapshot = new PlanSnapshot(reads is null ? view : Reading.Trimmed(view, reads));
        var around = Enumerable.Range(0, places.Length).Where(i => !scope.Contains(i) && (reads is null || reads.Contains(places[i].Position.Id)))
            .Select(i => (places[i], places[i].Fits[0])).ToArray();
        return new PlanTable(demand, [.. scope], [.. Combinations(scope).Select(c => known.TryGetValue(Key(c), out var cost) ? cost : known[Key(c)] = CostOf(judge(snapshot.Book([.. around, .. scope.Zip(c, (p, f) => (places[p], f.JudgedAs ?? f))]))))]);
    }

    private static string Key(Fit[] fits) => string.Join('|', fits.Select(f => (f.JudgedAs ?? f).Id));

    private IEnumerable<Fit[]> Combinations(int[] scope)
    {
        IEnumerable<Fit[]> all = [[]];
        foreach (var place in scope)
            all = all.SelectMany(a => places[place].Fits.Select(f => (Fit[])[.. a, f]));
        return all;
    }

    private static Compatibility WorstOf(ImmutableArray<PairingVerdict> verdicts) =>
        verdicts.IsEmpty ? Compatibility.NotAssessed : verdicts.Select(v => v.Outcome).MaxBy(o => Array.IndexOf(s_worse, o));

    private static readonly Compatibility[] s_worse = [Compatibility.Compatible, Compatibility.Conditional, Compatibility.NotAssessed, Compatibility.Incompatible];
}
