using RebuildApi.Engine.Diagnosis;
using Xunit.Abstractions;

namespace RebuildApi.Families.Tests.Diagnosis;

/// <summary>
/// Of all causes to which the engine gives 30 %, three in ten are there. Gearboxes are drawn from the network itself, so this says that the inference is
/// right, not that the judgements are; computed here, no source.
/// </summary>
public sealed class CalibrationTests(ITestOutputHelper output)
{
    private const int Cases = 1500;
    private static readonly double[] s_bins = [0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];

    [Fact]
    public void Of_the_causes_that_are_given_a_probability_that_share_is_there()
    {
        var network = new CauseNetwork(Shipped.Of("brackenmere-4"));
        var chance = new Random(20260302);
        var given = new List<(double Probability, bool There)>();
        for (var i = 0; i < Cases; i++)
            given.AddRange(Drawn(network, chance));

        foreach (var bin in given.GroupBy(g => Array.FindLastIndex(s_bins, b => b <= g.Probability)).OrderBy(b => b.Key))
        {
            var (count, mean, share) = (bin.Count(), bin.Average(g => g.Probability), bin.Average(g => g.There ? 1.0 : 0.0));
            output.WriteLine(FormattableString.Invariant($"{s_bins[bin.Key]:0.00} up: {count} causes, given {mean:0.000} on average, there {share:0.000}"));
            // Four standard deviations of a share of so many; a wrong inference is off by far more in the full bins.
            Assert.InRange(share, mean - 4 * Math.Sqrt(mean * (1 - mean) / count), mean + 4 * Math.Sqrt(mean * (1 - mean) / count));
        }
    }

    private static IEnumerable<(double Probability, bool There)> Drawn(CauseNetwork network, Random chance)
    {
        var there = network.Ranges.Select(p => chance.NextDouble() < p.Best).ToArray();
        string[] symptoms = ["jumps-out-under-load", "jumps-out-on-overrun", "clash", "noise-gone-in-direct", "noise-in-neutral", "noise-in-every-gear"];
        var clues = symptoms.Select(s => network.Of(new SymptomSeen(s, null))).Concat(network.Tests).Concat(network.Signs.Select(s => s.Clue).Where((_, i) => i % 3 == 0));
        ImmutableArray<ClueSeen> seen = [.. clues.Select(c => new ClueSeen(c, chance.NextDouble() < NoisyOr.Effect(c.Otherwise.Best, c.Links.Where(l => there[l.Cause]).Select(l => l.Shown.Best))))];
        var answer = Diagnoser.Diagnose(network, new DiagnosisQuestion(seen) { Checks = 0 });
        return network.Causes.Select((c, i) => (answer.Causes.Single(r => r.Cause.Id == c.Id).Probability, there[i]));
    }
}
