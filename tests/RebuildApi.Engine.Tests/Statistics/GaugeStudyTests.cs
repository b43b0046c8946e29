using System.Collections.Immutable;
using CsCheck;
using RebuildApi.Engine.Statistics;

namespace RebuildApi.Engine.Tests.Statistics;

public sealed class GaugeStudyTests
{
    // R package SixSigma, data ss.data.rr, time1: 3 parts, 3 operators, 3 runs; results computed with that package.
    private static readonly double[][] Small =
    [
        [1.27, 0.90, 1.09, 1.12, 1.09, 1.15, 1.73, 1.28, 1.77],
        [1.34, 1.32, 1.27, 1.24, 1.00, 1.14, 1.64, 1.65, 1.77],
        [1.09, 1.26, 1.09, 1.48, 1.15, 1.15, 1.64, 1.44, 1.68],
    ];

    // AIAG, Measurement systems analysis, 4th edition: the average-and-range sheet of the published study. The sheet works from rounded
    // means and factors, so its last digit may differ; percentages computed here.
    [Fact]
    public void Average_and_range_give_the_published_sheet()
    {
        var result = GaugeStudy.ByAverageAndRange(PublishedData.GaugeStudy());

        Assert.Equal(0.20188, result.Repeatability, 3e-5);
        Assert.Equal(0.22963, result.Reproducibility, 6e-5);
        Assert.Equal(0.30575, result.Gauge, 5e-5);
        Assert.Equal(1.10456, result.PartVariation, 2e-4);
        Assert.Equal(1.14610, result.Total, 2e-4);
        Assert.Equal(17.62, result.Percent(result.Repeatability), 0.015);
        Assert.Equal(17.61, result.Percent(result.Repeatability), 0.01);
        Assert.Equal(20.04, result.Percent(result.Reproducibility), 0.01);
        Assert.Equal(26.68, result.PercentOfStudy, 0.01);
        Assert.Equal(96.38, result.Percent(result.PartVariation), 0.01);
        Assert.Equal(5, result.DistinctCategories);
        Assert.Equal(1, result.RangesOutOfControl); // appraiser B on part 4
    }

    // What stands on the same sheet before any factor: ranges and means by appraiser, R-bar, X-diff, Rp and the limit of the ranges.
    [Fact]
    public void The_sheet_itself_is_the_published_one()
    {
        var sheet = GaugeStudy.ByAverageAndRange(PublishedData.GaugeStudy()).Sheet!;

        Assert.Equal([0.184, 0.513, 0.328], sheet.MeanRanges.Select(r => Math.Round(r, 3)));
        Assert.Equal([0.1903, 0.0683, -0.2543], sheet.Means.Select(m => Math.Round(m, 4)));
        Assert.Equal(0.3417, sheet.MeanRange, 5e-5);
        Assert.Equal(0.4446, sheet.AppraiserSpread, 1e-4); // from rounded means; exactly 0.444667
        Assert.Equal(0.444667, sheet.AppraiserSpread, 5e-7);
        Assert.Equal(3.511, sheet.PartSpread, 5e-4);
        Assert.Equal(0.880, sheet.RangeLimit, 7e-4); // with the factor 2.574 to three decimals 0.87945
        var worst = PublishedData.GaugeStudy().GroupBy(r => (r.Appraiser, r.Part)).Select(g => (g.Key, Range: g.Max(r => r.Value) - g.Min(r => r.Value))).MaxBy(x => x.Range);
        Assert.Equal(1.02, worst.Range, 1e-9);
        Assert.True(worst.Range > sheet.RangeLimit);
    }

    // The same study by analysis of variance.
    [Fact]
    public void Analysis_of_variance_gives_the_published_table_and_components()
    {
        var result = GaugeStudy.ByAnova(PublishedData.GaugeStudy());

        Assert.Equal(["appraiser", "part", "repeatability", "total"], result.Table.Select(l => l.Source));
        AssertLine(result.Table[0], 3.167262, 2, 39.617);
        AssertLine(result.Table[1], 88.361934, 9, 245.614);
        Assert.Equal(78, result.Table[2].Freedom);
        Assert.Equal(0.039973, result.Table[2].MeanSquare, 5e-7);
        Assert.Equal(94.647112, result.Table[3].SumOfSquares, 5e-7);
        Assert.Equal(0.199933, result.Repeatability, 5e-7);
        Assert.Equal(0.226838, result.Reproducibility, 5e-7);
        Assert.Equal(0.302373, result.Gauge, 2e-6);
        Assert.Equal(1.042327, result.PartVariation, 5e-7);
        Assert.Equal(1.085, result.Total, 5e-4);
        Assert.Equal(7.76, result.PercentContribution, 5e-3);
        Assert.Equal(27.86, result.PercentOfStudy, 5e-3);
    }

    [Fact]
    public void The_two_methods_tell_five_and_four_sizes_apart_on_the_same_data()
    {
        Assert.Equal(5, GaugeStudy.ByAverageAndRange(PublishedData.GaugeStudy()).DistinctCategories);
        Assert.Equal(4, GaugeStudy.ByAnova(PublishedData.GaugeStudy()).DistinctCategories);
    }

    [Fact]
    public void An_interaction_kept_with_a_negative_variance_counts_as_none_and_is_named()
    {
        var result = GaugeStudy.ByAnova(PublishedData.GaugeStudy(), poolAbove: 1);
        var interaction = result.Table.Single(l => l.Source == "interaction");

        AssertLine(interaction, 0.358982, 18, 0.4337);
        Assert.Equal(1.583631, result.Table[0].MeanSquare, 5e-7);
        Assert.Equal(9.817993, result.Table[1].MeanSquare, 5e-7);
        Assert.Equal(2.758933, result.Table.Single(l => l.Source == "repeatability").SumOfSquares, 5e-7);
        Assert.Equal(0.9741, interaction.P!.Value, 5e-5);
        Assert.Equal(0.019943, interaction.MeanSquare, 5e-7);
        Assert.Equal(0.045982, result.Table.Single(l => l.Source == "repeatability").MeanSquare, 5e-7);
        Assert.Equal("interaction", Assert.Single(result.NegativeVariances));
        Assert.Equal(0.313217, result.Gauge, 5e-7);
        Assert.Equal(28.752, result.PercentOfStudy, 5e-4);
    }

    [Fact]
    public void A_small_open_study_keeps_or_pools_its_interaction_as_its_package_does()
    {
        var kept = GaugeStudy.ByAnova(SmallStudy(), poolAbove: 1);
        var pooled = GaugeStudy.ByAnova(SmallStudy());

        Assert.Equal([0.052941, 1.200719, 0.083393, 0.385400, 1.722452], kept.Table.Select(l => Math.Round(l.SumOfSquares, 6)));
        Assert.Equal(28.797, kept.Table[1].F!.Value, 5e-4);
        Assert.Equal(1.270, kept.Table[0].F!.Value, 5e-4);
        Assert.Equal(0.974, kept.Table[2].F!.Value, 5e-4);
        Assert.Equal(0.446, kept.Table[2].P!.Value, 5e-4);
        Assert.Equal(0.0213088, pooled.Repeatability * pooled.Repeatability, 5e-8);
        Assert.Equal(0.0005735, pooled.Reproducibility * pooled.Reproducibility, 5e-8);
        Assert.Equal(0.0643389, pooled.PartVariation * pooled.PartVariation, 5e-8);
        Assert.Equal(25.379, pooled.PercentContribution, 5e-4);
        Assert.Equal(50.378, pooled.PercentOfStudy, 5e-4);
    }

    [Fact]
    public void Components_of_variance_add_up_and_the_sums_of_squares_too() => Gen.Double[-1, 1].Array[3 * 4 * 2].Sample(values =>
    {
        var study = Study(values, 3, 4);
        var result = GaugeStudy.ByAnova(study, poolAbove: 1);
        var parts = result.Table[..^1].Sum(l => l.SumOfSquares);
        return Math.Abs(parts - result.Table[^1].SumOfSquares) < 1e-10 && result.Table[..^1].Sum(l => l.Freedom) == result.Table[^1].Freedom;
    });

    // One-way analysis of variance against a reference library's F distribution and variances.
    [Fact]
    public void Part_effect_agrees_with_variances_of_a_reference_library() => Gen.Double[-1, 1].Array[2 * 5 * 3].Sample(values =>
    {
        var study = Study(values, 2, 5);
        var line = GaugeStudy.ByAnova(study, poolAbove: -1).Table[1];
        var means = study.GroupBy(r => r.Part).Select(g => MathNet.Numerics.Statistics.Statistics.Mean(g.Select(r => r.Value)));
        var meanSquare = 2 * 3 * MathNet.Numerics.Statistics.Statistics.Variance(means);
        var p = 1 - MathNet.Numerics.Distributions.FisherSnedecor.CDF(4, 24, line.F!.Value);
        return Math.Abs(line.MeanSquare - meanSquare) < 1e-10 && Math.Abs(line.P!.Value - p) < 1e-9;
    });

    // Two-way analysis of variance with interaction as differences of least-squares fits, solved and tested by a reference library.
    [Fact]
    public void Both_effects_and_their_interaction_agree_with_least_squares_of_a_reference_library() => Gen.Double[-1, 1].Array[3 * 4 * 2].Sample(values =>
    {
        var study = Study(values, 3, 4);
        var table = GaugeStudy.ByAnova(study, poolAbove: 1).Table.ToDictionary(l => l.Source);
        var (byAppraiser, byPart) = (Columns(study, r => r.Appraiser), Columns(study, r => r.Part));
        double[][] byCell = [.. byAppraiser.SelectMany(a => byPart.Select(p => a.Zip(p, (x, y) => x * y).ToArray()))];
        var left = (Mean: Left(study, []), A: Left(study, byAppraiser), P: Left(study, byPart), Both: Left(study, [.. byAppraiser, .. byPart]), All: Left(study, [.. byAppraiser, .. byPart, .. byCell]));
        var (interaction, error) = ((left.Both - left.All) / 6, left.All / 12);
        return Math.Abs(table["appraiser"].SumOfSquares - (left.Mean - left.A)) < 1e-9
            && Math.Abs(table["part"].SumOfSquares - (left.Mean - left.P)) < 1e-9
            && Math.Abs(table["interaction"].SumOfSquares - (left.Both - left.All)) < 1e-9
            && Math.Abs(table["repeatability"].SumOfSquares - left.All) < 1e-9
            && Math.Abs(table["interaction"].P!.Value - (1 - MathNet.Numerics.Distributions.FisherSnedecor.CDF(6, 12, interaction / error))) < 1e-9
            && Math.Abs(table["appraiser"].P!.Value - (1 - MathNet.Numerics.Distributions.FisherSnedecor.CDF(2, 6, (left.Mean - left.A) / 2 / interaction))) < 1e-9;
    }, iter: 60);

    /// <summary>A column of ones for each level but the first.</summary>
    private static double[][] Columns(ImmutableArray<GaugeReading> study, Func<GaugeReading, string> level) =>
        [.. study.Select(level).Distinct().Order(StringComparer.Ordinal).Skip(1).Select(l => study.Select(r => level(r) == l ? 1.0 : 0.0).ToArray())];

    /// <summary>Sum of squares that a fit with a mean and these columns leaves.</summary>
    private static double Left(ImmutableArray<GaugeReading> study, double[][] columns)
    {
        double[][] rows = [.. study.Select((_, i) => columns.Select(c => c[i]).Prepend(1.0).ToArray())];
        var fit = MathNet.Numerics.LinearRegression.MultipleRegression.QR(rows, [.. study.Select(r => r.Value)], intercept: false);
        return study.Select((r, i) => r.Value - rows[i].Zip(fit, (x, b) => x * b).Sum()).Sum(e => e * e);
    }

    [Fact]
    public void A_study_with_a_reading_missing_is_refused() =>
        Assert.Throws<ArgumentException>(() => GaugeStudy.ByAnova(PublishedData.GaugeStudy().RemoveAt(17)));

    // Common practice: below 10 % of the tolerance good, to 30 % conditional, beyond not fit.
    [Theory]
    [InlineData(20.0, "good")]
    [InlineData(10.0, "conditional")]
    [InlineData(3.0, "not-fit")]
    public void A_gauge_is_fit_for_a_window_wide_enough(double width, string fit) =>
        Assert.Equal(fit, GaugeStudy.ByAnova(PublishedData.GaugeStudy()).FitFor(width));

    private static void AssertLine(AnovaLine line, double squares, int freedom, double f)
    {
        Assert.Equal(squares, line.SumOfSquares, 5e-7);
        Assert.Equal(freedom, line.Freedom);
        Assert.Equal(f, line.F!.Value, f > 1 ? 5e-4 : 5e-5);
    }

    private static ImmutableArray<GaugeReading> SmallStudy() =>
        [.. Small.SelectMany((row, appraiser) => row.Select((value, i) => new GaugeReading($"op{appraiser}", $"part{i / 3}", value)))];

    private static ImmutableArray<GaugeReading> Study(double[] values, int appraisers, int parts) =>
        [.. values.Select((v, i) => new GaugeReading($"a{i % appraisers}", $"p{i / appraisers % parts}", v))];
}
