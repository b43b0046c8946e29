using System.Collections.Immutable;

namespace RebuildApi.Engine.Statistics;

/// <summary>One reading of a gauge study.</summary>
/// <param name="Appraiser">The person, bench or instrument.</param>
/// <param name="Part">The part.</param>
/// <param name="Value">The value, in any one unit.</param>
public sealed record GaugeReading(string Appraiser, string Part, double Value);

/// <summary>A crossed study: every appraiser read every part the same number of times, at least twice.</summary>
internal sealed class CrossedStudy
{
    private readonly ImmutableArray<ImmutableArray<ImmutableArray<double>>> _cells;

    private CrossedStudy(ImmutableArray<ImmutableArray<ImmutableArray<double>>> cells) => _cells = cells;

    public int Appraisers => _cells.Length;

    public int Parts => _cells[0].Length;

    public int Trials => _cells[0][0].Length;

    /// <exception cref="ArgumentException">Fewer than two of anything, or a reading missing.</exception>
    public static CrossedStudy Of(ImmutableArray<GaugeReading> readings)
    {
        var parts = readings.Select(r => r.Part).Distinct().Order(StringComparer.Ordinal).ToArray();
        var cells = readings.GroupBy(r => r.Appraiser).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(appraiser => parts.Select(p => appraiser.Where(r => r.Part == p).Select(r => r.Value).ToImmutableArray()).ToImmutableArray())
            .ToImmutableArray();
        if (cells.Length < 2 || parts.Length < 2)
            throw new ArgumentException("A gauge study needs at least two appraisers and two parts.", nameof(readings));
        var trials = cells[0][0].Length;
        if (trials < 2 || cells.Any(a => a.Any(c => c.Length != trials)))
            throw new ArgumentException("Every appraiser reads every part the same number of times, at least twice.", nameof(readings));
        return new CrossedStudy(cells);
    }

    public double Mean => _cells.Average(a => a.Average(c => c.Average()));

    public double MeanOfAppraiser(int appraiser) => _cells[appraiser].Average(c => c.Average());

    public double MeanOfPart(int part) => _cells.Average(a => a[part].Average());

    public ImmutableArray<double> Cell(int appraiser, int part) => _cells[appraiser][part];

    public IEnumerable<ImmutableArray<double>> Cells => _cells.SelectMany(a => a);
}
