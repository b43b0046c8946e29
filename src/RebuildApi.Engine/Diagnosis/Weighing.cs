using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>
/// One set of evidence laid out as tables with one plan for them. Every question asked of it (leave a clue out, take a cause as given, suppose a test
/// did not show) only changes numbers in the tables, never the plan.
/// </summary>
internal sealed class Weighing
{
    private readonly CauseNetwork _network;
    private readonly EliminationPlan _plan;
    private readonly double[][] _tables;
    private readonly ImmutableArray<int> _first;

    public Weighing(CauseNetwork network, ImmutableArray<ClueSeen> seen)
    {
        (_network, Seen) = (network, seen);
        var factors = new List<Factor>(network.Ranges.Select((p, i) => Factor.Prior(i, p.Best)));
        var first = ImmutableArray.CreateBuilder<int>(seen.Length);
        foreach (var clue in seen)
        {
            first.Add(factors.Count);
            factors.AddRange(NoisyOr.Parts(
                clue.Present, network.Causes.Length + first.Count, clue.Clue.Otherwise.Best, [.. clue.Clue.Links.Select(l => l.Cause)], [.. clue.Clue.Links.Select(l => l.Shown.Best)]));
        }

        _first = first.ToImmutable();
        _plan = EliminationPlan.Of([.. factors.Select(f => f.Scope)]);
        _tables = [.. factors.Select(f => f.Values.ToArray())];
        All = new Elimination(_plan, _tables);
    }

    public ImmutableArray<ClueSeen> Seen { get; }

    /// <summary>With everything that was seen.</summary>
    public Elimination All { get; }

    /// <summary>How likely a cause is in the light of a run of these tables.</summary>
    public double Yes(Elimination run, int cause) => Math.Clamp(_network.Ranges[cause].Best * run.Slope(cause, 1) / run.Z, 0, 1);

    /// <summary>As if one clue had not been looked at.</summary>
    public Elimination Without(int clue)
    {
        var tables = (double[][])_tables.Clone();
        if (Seen[clue].Present)
            tables[_first[clue]] = [1, 0];
        else
            Array.Fill(tables, [1, 1], _first[clue] + 1, Seen[clue].Clue.Links.Length);
        if (!Seen[clue].Present)
            tables[_first[clue]] = [1];
        return new Elimination(_plan, tables);
    }

    /// <summary>With a cause taken as being there. Z is the probability of both.</summary>
    public Elimination With(int cause) => Changed((cause, [0, _tables[cause][1]]));

    /// <summary>With none of some causes being there. Z is the probability of both.</summary>
    public Elimination WithNone(IEnumerable<int> causes) => Changed([.. causes.Select(c => (c, new[] { _tables[c][0], 0.0 }))]);

    /// <summary>With a further clue known not to be there, short of its leak: Z and the slopes want a factor of 1 - leak.</summary>
    public Elimination WithAbsent(Clue clue) =>
        Changed([.. clue.Links.Select(l => (l.Cause, new[] { _tables[l.Cause][0], _tables[l.Cause][1] * (1 - l.Shown.Best) }))]);

    /// <summary>Everything that was judged and takes part, with how Z changes by it.</summary>
    /// <param name="run">A run of these tables.</param>
    /// <param name="given">The cause that the run takes as given, if any.</param>
    public IEnumerable<Judgeable> Judged(Elimination run, int? given = null)
    {
        for (var c = 0; c < _network.Causes.Length; c++)
            yield return new(null, c, _network.Ranges[c], run.Slope(c, 1) - (c == given ? 0 : run.Slope(c, 0)));
        for (var s = 0; s < Seen.Length; s++)
        {
            var (clue, at) = (Seen[s].Clue, _first[s]);
            yield return new(s, null, clue.Otherwise, Seen[s].Present ? run.Slope(at, 1) : -run.Slope(at, 0));
            for (var i = 0; i < clue.Links.Length; i++)
                yield return new(s, clue.Links[i].Cause, clue.Links[i].Shown, -run.Slope(at + 1 + i, Seen[s].Present ? 3 : 1));
        }
    }

    private Elimination Changed(params ReadOnlySpan<(int Table, double[] Values)> changes)
    {
        var tables = (double[][])_tables.Clone();
        foreach (var (table, values) in changes)
            tables[table] = values;
        return new Elimination(_plan, tables);
    }
}

/// <summary>One number that somebody judged.</summary>
/// <param name="Clue">Index of the clue it belongs to; none for a prior.</param>
/// <param name="Cause">The cause; none for the leak of a clue.</param>
/// <param name="Range">The number with its range.</param>
/// <param name="Slope">How the probability of what was seen changes by it.</param>
internal readonly record struct Judgeable(int? Clue, int? Cause, Likelihood Range, double Slope);
