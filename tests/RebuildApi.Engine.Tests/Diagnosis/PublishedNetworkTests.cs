using System.Collections.Immutable;
using CsCheck;
using RebuildApi.Engine.Diagnosis;

namespace RebuildApi.Engine.Tests.Diagnosis;

/// <summary>Networks of the literature, through the same inference as the families'.</summary>
public sealed class PublishedNetworkTests
{
    private const int A = 0, S = 1, T = 2, L = 3, B = 4, E = 5, X = 6, D = 7;

    /// <summary>
    /// Lauritzen and Spiegelhalter, "Local computations with probabilities on graphical structures and their application to expert systems", Journal of the
    /// Royal Statistical Society B 50, 1988: the visit to Asia. Tables as published; posteriors computed by full enumeration of the 256 states.
    /// </summary>
    private static readonly BeliefNetwork Asia = new(8,
    [
        Factor.Prior(A, 0.01), Factor.Prior(S, 0.5),
        Factor.Given(T, [A], [0.01, 0.05]), Factor.Given(L, [S], [0.01, 0.1]), Factor.Given(B, [S], [0.3, 0.6]),
        Factor.Given(E, [T, L], [0, 1, 1, 1]), Factor.Given(X, [E], [0.05, 0.98]),
        Factor.Given(D, [B, E], [0.1, 0.8, 0.7, 0.9]),
    ]);

    public static TheoryData<string, double, double[]> AsiaRows => new()
    {
        { "", 1, [0.0104, 0.055, 0.45, 0.064828, 0.11029004, 0.4359706] },
        { "a", 0.01, [0.05, 0.055, 0.45, 0.10225, 0.1450925, 0.4501375] },
        { "d", 0.4359706, [0.0188453075, 0.1027592228, 0.8339673363, 0.1205358343, 0.1620983259, 1] },
        { "a-s", 0.005, [0.05, 0.01, 0.3, 0.0595, 0.105335, 0.336775] },
        { "adxs", 0.00069376, [0.2895814114, 0.5791628229, 0.7009196264, 0.8397860932, 1, 1] },
    };

    [Theory]
    [MemberData(nameof(AsiaRows))]
    public void The_visit_to_Asia(string seen, double evidence, double[] posteriors)
    {
        var beliefs = Asia.Given(Read(seen));

        Assert.Equal(evidence, beliefs.Evidence, 5e-9);
        Assert.Equal(posteriors, new[] { T, L, B, E, X, D }.Select(v => Math.Round(beliefs.Yes[v], 10)));
    }

    /// <summary>Russell and Norvig, Artificial Intelligence: a modern approach, the burglary network; figures from memory, recomputed.</summary>
    [Fact]
    public void A_burglary_when_both_neighbours_call()
    {
        const int Burglary = 0, Earthquake = 1, Alarm = 2, John = 3, Mary = 4;
        var network = new BeliefNetwork(5,
        [
            Factor.Prior(Burglary, 0.001), Factor.Prior(Earthquake, 0.002), Factor.Given(Alarm, [Burglary, Earthquake], [0.001, 0.94, 0.29, 0.95]),
            Factor.Given(John, [Alarm], [0.05, 0.90]), Factor.Given(Mary, [Alarm], [0.01, 0.70]),
        ]);

        Assert.Equal(0.2841718354, network.Given(new Dictionary<int, bool> { [John] = true, [Mary] = true }).Yes[Burglary], 5e-11);
        var all = new Dictionary<int, bool> { [John] = true, [Mary] = true, [Alarm] = true, [Burglary] = false, [Earthquake] = false };
        Assert.Equal(0.00062811126, network.Given(all).Evidence, 5e-12);
    }

    /// <summary>The same book, the noisy-OR of fever; inhibitions cold 0.6, flu 0.2, malaria 0.1; figures from memory, recomputed.</summary>
    [Fact]
    public void Fever_from_a_cold_flu_and_malaria()
    {
        const int Cold = 0, Flu = 1, Malaria = 2, Fever = 3;
        var network = new BeliefNetwork(4,
        [
            Factor.Prior(Cold, 0.5), Factor.Prior(Flu, 0.5), Factor.Prior(Malaria, 0.5), NoisyOr.Table(Fever, 0, [Cold, Flu, Malaria], [0.4, 0.8, 0.9]),
        ]);
        var fever = Enumerable.Range(0, 8).Select(s => network.Given(new Dictionary<int, bool> { [Cold] = (s & 4) != 0, [Flu] = (s & 2) != 0, [Malaria] = (s & 1) != 0 }).Yes[Fever]);

        Assert.Equal([0, 0.9, 0.8, 0.98, 0.4, 0.94, 0.88, 0.988], fever.Select(p => Math.Round(p, 12)));
    }

    /// <summary>Computed here, no source: both ways of writing a noisy-OR say the same for any numbers.</summary>
    [Fact]
    public void The_small_tables_of_a_noisy_or_say_what_the_whole_table_says()
    {
        var probability = Gen.Double[0.01, 0.99];
        Gen.Select(probability, probability.Array[3], probability.Array[3], Gen.Bool).Sample((leak, priors, strengths, seen) =>
        {
            ImmutableArray<Factor> causes = [.. priors.Select((p, i) => Factor.Prior(i, p))];
            ImmutableArray<double> strong = [.. strengths];
            var whole = new BeliefNetwork(4, [.. causes, NoisyOr.Table(3, leak, [0, 1, 2], strong)]).Given(new Dictionary<int, bool> { [3] = seen });
            var parts = new BeliefNetwork(4, [.. causes, .. NoisyOr.Parts(seen, 3, leak, [0, 1, 2], strong)]).Given(new Dictionary<int, bool>());
            // Not seen needs no helping variable: left free, it counts both its states.
            Assert.Equal(whole.Evidence, parts.Evidence / (seen ? 1 : 2), 1e-12);
            for (var c = 0; c < 3; c++)
                Assert.Equal(whole.Yes[c], parts.Yes[c], 1e-9);
        });
    }

    /// <summary>Computed here, no source: against adding up every state.</summary>
    [Fact]
    public void Elimination_agrees_with_adding_up_every_state()
    {
        var table = Gen.Double[0.01, 0.99].Array[4];
        Gen.Select(table, table, table, table, Gen.Int[0, 4], Gen.Bool).Sample((t1, t2, t3, t4, at, yes) =>
        {
            ImmutableArray<Factor> tables =
            [
                Factor.Prior(0, t1[0]), Factor.Given(1, [0], [t1[1], t1[2]]), Factor.Given(2, [0, 1], [.. t2]), Factor.Given(3, [1, 2], [.. t3]), Factor.Given(4, [0, 3], [.. t4]),
            ];
            var beliefs = new BeliefNetwork(5, tables).Given(new Dictionary<int, bool> { [at] = yes });
            var states = Enumerable.Range(0, 32).Where(s => ((s >> at) & 1) == 1 == yes).ToDictionary(s => s, s => tables.Aggregate(1.0, (p, f) => p * ValueAt(f, s)));
            Assert.Equal(states.Values.Sum(), beliefs.Evidence, 1e-12);
            for (var v = 0; v < 5; v++)
                Assert.Equal(states.Where(s => ((s.Key >> v) & 1) == 1).Sum(s => s.Value) / states.Values.Sum(), beliefs.Yes[v], 1e-10);
        });
    }

    private static double ValueAt(Factor factor, int state) => factor.Values[factor.Scope.Select((v, j) => ((state >> v) & 1) << j).Sum()];

    private static Dictionary<int, bool> Read(string seen)
    {
        var read = new Dictionary<int, bool>();
        for (var i = 0; i < seen.Length; i++)
        {
            if (seen[i] != '-')
                read["astlbexd".IndexOf(seen[i], StringComparison.Ordinal)] = i == 0 || seen[i - 1] != '-';
        }

        return read;
    }
}
