using System.Collections.Immutable;
using RebuildApi.Engine.Numerics;

namespace RebuildApi.Engine.Statistics;

/// <summary>Crossed gauge studies (AIAG, Measurement systems analysis, 4th edition, chapter III).</summary>
public static class GaugeStudy
{
    /// <summary>p above which the interaction is pooled with the repeatability; the customary 0.25 keeps a doubtful one.</summary>
    public const double PoolAbove = 0.25;

    /// <summary>By analysis of variance.</summary>
    /// <param name="readings">A balanced crossed study.</param>
    /// <param name="poolAbove">The interaction is kept when its p is at most this: 1 always keeps it, below 0 never.</param>
    /// <exception cref="ArgumentException">The study is not balanced, or too small.</exception>
    public static GaugeStudyResult ByAnova(ImmutableArray<GaugeReading> readings, double poolAbove = PoolAbove)
    {
        var study = CrossedStudy.Of(readings);
        var squares = SumsOfSquares.Of(study);
        var (a, p, n) = (study.Appraisers, study.Parts, study.Trials);
        var interaction = Line("interaction", squares.Interaction, (a - 1) * (p - 1), squares.Error / (a * p * (n - 1)), a * p * (n - 1));
        var isKept = interaction.P <= poolAbove;
        var error = isKept
            ? new AnovaLine("repeatability", squares.Error, a * p * (n - 1), null, null)
            : new AnovaLine("repeatability", squares.Error + squares.Interaction, a * p * (n - 1) + interaction.Freedom, null, null);
        var against = isKept ? interaction : error;
        var appraiser = Line("appraiser", squares.Appraiser, a - 1, against.MeanSquare, against.Freedom);
        var part = Line("part", squares.Part, p - 1, against.MeanSquare, against.Freedom);

        var components = new Components();
        return new GaugeStudyResult(
            Math.Sqrt(error.MeanSquare),
            components.Root("appraiser", (appraiser.MeanSquare - against.MeanSquare) / (p * n)),
            isKept ? components.Root("interaction", (interaction.MeanSquare - error.MeanSquare) / n) : 0,
            components.Root("part", (part.MeanSquare - against.MeanSquare) / (a * n)),
            error.Freedom,
            [appraiser, part, .. isKept ? new[] { interaction } : [], error, new AnovaLine("total", squares.Total, a * p * n - 1, null, null)],
            [.. components.Negative],
            0);
    }

    /// <summary>By average and range: 2 to 10 trials, appraisers and parts. Appraiser and part effects come from single ranges.</summary>
    /// <param name="readings">A balanced crossed study.</param>
    /// <exception cref="ArgumentException">The study is not balanced, or too small.</exception>
    public static GaugeStudyResult ByAverageAndRange(ImmutableArray<GaugeReading> readings)
    {
        var study = CrossedStudy.Of(readings);
        var (a, p, n) = (study.Appraisers, study.Parts, study.Trials);
        var sheet = SheetOf(study);
        var repeatability = sheet.MeanRange / RangeFactors.Mean(n);
        var appraisers = sheet.AppraiserSpread / RangeFactors.OfOneRange(a);
        var components = new Components();
        return new GaugeStudyResult(
            repeatability,
            components.Root("appraiser", appraisers * appraisers - repeatability * repeatability / (p * n)),
            0,
            sheet.PartSpread / RangeFactors.OfOneRange(p),
            a * p * (n - 1),
            [],
            [.. components.Negative],
            study.Cells.Count(c => Range(c) > sheet.RangeLimit))
        { Sheet = sheet };
    }

    private static AverageRangeSheet SheetOf(CrossedStudy study)
    {
        var n = study.Trials;
        var means = Enumerable.Range(0, study.Appraisers).Select(study.MeanOfAppraiser).ToImmutableArray();
        var ranges = Enumerable.Range(0, study.Appraisers).Select(a => Enumerable.Range(0, study.Parts).Average(p => Range(study.Cell(a, p)))).ToImmutableArray();
        var mean = ranges.Average();
        return new AverageRangeSheet(
            ranges, means, mean, Range(means), Range([.. Enumerable.Range(0, study.Parts).Select(study.MeanOfPart)]),
            mean * (1 + 3 * RangeFactors.Deviation(n) / RangeFactors.Mean(n)));
    }

    private static double Range(ImmutableArray<double> values) => values.Max() - values.Min();

    private static AnovaLine Line(string source, double squares, int freedom, double against, int againstFreedom)
    {
        var f = against > 0 ? squares / freedom / against : squares > 0 ? double.PositiveInfinity : 0;
        return new AnovaLine(source, squares, freedom, f, FisherF.UpperTail(f, freedom, againstFreedom));
    }

    /// <summary>Roots of variance components; a negative one is noise about 0 and is taken as 0, and named.</summary>
    private sealed class Components
    {
        public List<string> Negative { get; } = [];

        public double Root(string name, double variance)
        {
            if (variance >= 0)
                return Math.Sqrt(variance);
            Negative.Add(name);
            return 0;
        }
    }
}

/// <summary>Sums of squares of a balanced crossed study, each from deviations.</summary>
internal sealed record SumsOfSquares(double Appraiser, double Part, double Interaction, double Error, double Total)
{
    public static SumsOfSquares Of(CrossedStudy study)
    {
        var (a, p, n) = (study.Appraisers, study.Parts, study.Trials);
        var mean = study.Mean;
        var appraisers = Enumerable.Range(0, a).Select(study.MeanOfAppraiser).ToArray();
        var parts = Enumerable.Range(0, p).Select(study.MeanOfPart).ToArray();
        var (interaction, error, total) = (0.0, 0.0, 0.0);
        for (var i = 0; i < a; i++)
        {
            for (var j = 0; j < p; j++)
            {
                var cell = study.Cell(i, j);
                var average = cell.Average();
                interaction += n * Square(average - appraisers[i] - parts[j] + mean);
                error += cell.Sum(x => Square(x - average));
                total += cell.Sum(x => Square(x - mean));
            }
        }

        return new SumsOfSquares(p * n * appraisers.Sum(m => Square(m - mean)), a * n * parts.Sum(m => Square(m - mean)), interaction, error, total);
    }

    private static double Square(double x) => x * x;
}
