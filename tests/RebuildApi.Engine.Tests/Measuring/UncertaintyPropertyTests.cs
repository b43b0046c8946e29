using System.Collections.Immutable;
using CsCheck;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.MonteCarlo;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Measuring;

public sealed class UncertaintyPropertyTests
{
    private static readonly InstrumentState Micrometer = new(
        "mic-1", "outside-micrometer", new Exact(Length.Millimetres(0.001m)), new Exact(Length.Millimetres(0.004m)), ErrorModel.Rectangular, null);

    // A reading at the mean lowers s²/n from Q/((n − 1)n) to Q/(n(n + 1)); one elsewhere adds at most what its own distance brings:
    // Q grows by d²·n/(n + 1), so s²/n becomes (Q + d²·n/(n + 1))/(n(n + 1)).
    [Fact]
    public void One_more_reading_changes_the_uncertainty_of_the_mean_by_the_small_sample_rule() => Gen.Select(Gen.Int[-50, 50].Array[2, 10], Gen.Int[-50, 50]).Sample((microns, next) =>
    {
        var n = microns.Length;
        var mean = microns.Average();
        var squares = microns.Sum(x => (x - mean) * (x - mean));
        var expected = Math.Sqrt((squares + (next - mean) * (next - mean) * n / (n + 1.0)) / (n * (n + 1.0)));

        var line = Of([.. microns, next]).Budget.FirstOrDefault(l => l.Name == "repeatability");

        return Math.Abs((line?.StandardUncertainty ?? 0) - expected * 1e-6) < 1e-14 && (line?.DegreesOfFreedom ?? n) == n;
    });

    [Fact]
    public void Repeating_the_same_readings_never_raises_the_uncertainty() => Gen.Int[-50, 50].Array[2, 8].Sample(microns =>
        Of([.. microns, .. microns]).StandardUncertainty <= Of([.. microns]).StandardUncertainty);

    [Fact]
    public void Repeatability_averages_out_and_the_instrument_s_error_does_not()
    {
        var once = Of([1, -1]);
        var often = Of([.. Enumerable.Repeat(0, 200).Select((_, i) => i % 2 == 0 ? 1 : -1)]);

        Assert.Equal(once.Budget.Single(l => l.Name == "limit-of-error").StandardUncertainty, often.Budget.Single(l => l.Name == "limit-of-error").StandardUncertainty);
        Assert.True(often.Budget[0].StandardUncertainty < 0.1 * once.Budget[0].StandardUncertainty);
    }

    [Fact]
    public void Shares_of_a_budget_add_up_to_the_whole() => Gen.Int[-50, 50].Array[1, 8].Sample(microns =>
        Math.Abs(Of([.. microns]).Budget.Sum(l => l.Share) - 1) < 1e-12);

    [Fact]
    public void Effective_freedom_lies_between_the_least_and_the_sum() => Gen.Select(Gen.Double[0.1, 10], Gen.Int[1, 30]).Array[1, 6].Sample(lines =>
    {
        var freedom = Budget.EffectiveDegreesOfFreedom([.. lines.Select((l, i) => new Contribution($"x{i}", l.Item1, l.Item2, 0))])!.Value;
        return freedom >= lines.Min(l => l.Item2) - 1e-9 && freedom <= lines.Sum(l => l.Item2) + 1e-9;
    });

    // A clearance of a case bore minus two widths, each read thrice: the budget beside a Monte Carlo of its inputs.
    [Fact]
    public void A_clearance_s_budget_agrees_with_its_simulation()
    {
        ImmutableArray<Estimate> parts = [Of([1, 2, 3, 2, 2, 3, 1, 2]), Of([-1, 0, 1, 0, 0, 1, -1, 0]), Of([4, 5, 4, 5, 4, 5, 4, 5])];
        var simulated = MonteCarloPropagation.Run(
            Models.Linear(0, 1, -1, -1), [.. parts.Select(EstimateInput.Of)], new MonteCarloOptions(Digits: 3, MaximumTrials: 500_000));

        Assert.Equal(Math.Sqrt(parts.Sum(p => p.StandardUncertainty * p.StandardUncertainty)), simulated.StandardUncertainty, 0.02 * simulated.StandardUncertainty);
    }

    private static Estimate Of(ImmutableArray<int> microns)
    {
        var readings = microns.Select(x => SnapshotBuilder.Millimetres(10m + x / 1000m)).ToImmutableArray();
        var measurement = new Measurement("m", "gear", 1, "width", readings, SnapshotBuilder.Taken("mic-1"), null);
        return ReadingsEstimate.Of(measurement, Dimension.Length, Statistic.Mean, Micrometer, null);
    }
}
