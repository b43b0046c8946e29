using System.Globalization;
using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Plans;

/// <summary>Readings of one characteristic of one part to a statistic with its uncertainty, worked out again line by line (JCGM 100:2008, 4.2, 4.3 and 5.1.2).</summary>
public sealed class CheckedReadings
{
    private const double ReferenceTemperature = 293.15;
    private readonly Dimension _dimension;
    private readonly Material? _material;
    private readonly List<One> _values = [];
    private readonly List<Reading> _bounds = [];

    public CheckedReadings(Component part, Characteristic characteristic, CheckedUnit unit)
    {
        _dimension = characteristic.Dimension;
        var kind = unit.Family.Kinds.Single(k => k.Id == part.Kind);
        _material = unit.Family.Materials.FirstOrDefault(m => m.Id == kind.Material);
        foreach (var taken in unit.Snapshot.Measurements.Where(m => m.Component == part.Id && m.Revision == part.Revision && m.Characteristic == characteristic.Id))
        {
            var gauge = unit.Snapshot.Instruments.FirstOrDefault(i => i.Id == taken.Taken.Instrument);
            if (unit.Snapshot.Policy.Overdue == OverdueRule.Block && gauge?.CalibrationDue is { } due && DateOnly.FromDateTime(taken.Taken.At.UtcDateTime) > due)
                continue;
            var study = gauge?.Studies?.FirstOrDefault(s => s.Kind == part.Kind && s.Characteristic == characteristic.Id && (s.Family is null || s.Family == unit.Family.Version.Id));
            _values.AddRange(taken.Readings.Where(r => PointOf(r) is not null).Select(r => Value(r, taken.Taken, gauge, study)));
            _bounds.AddRange(taken.Readings.Where(r => _dimension == Dimension.Length && PointOf(r) is null));
        }
    }

    public int Count => _values.Count + _bounds.Count;

    /// <summary>A statistic; none when nothing was read. Where there are bounds only, it is bounded, which the checker does not narrow.</summary>
    public CheckedValue? Of(Statistic statistic)
    {
        if (Count == 0)
            return null;
        if (_values.Count == 0)
            return new CheckedValue(null, 0, double.PositiveInfinity, EstimateBasis.Measured, double.NegativeInfinity, double.PositiveInfinity);
        var places = statistic == Statistic.Mean
            ? [[.. _values]]
            : _values.Where(v => v.Place is not null).GroupBy(v => v.Place).Select(g => g.ToArray()).Concat(_values.Where(v => v.Place is null).Select(v => (One[])[v])).ToArray();
        var (smallest, largest) = (places.MinBy(Mean)!, places.MaxBy(Mean)!);
        (double Weight, One[] Values)[] groups = statistic switch
        {
            Statistic.Mean => [(1, places[0])],
            Statistic.Min => [(1, smallest)],
            Statistic.Max => [(1, largest)],
            Statistic.Spread => [(1, largest), (-1, smallest)],
            _ => [(0.5, smallest), (0.5, largest)],
        };
        var form = statistic == Statistic.MinAndMax ? (Mean(largest) - Mean(smallest)) / 2 : 0;
        return CheckedValue.Of(groups.Sum(g => g.Weight * Mean(g.Values)), EstimateBasis.Measured, [.. Lines(groups, places), (form / Math.Sqrt(3), double.PositiveInfinity)]);
    }

    private IEnumerable<(double U, double Freedom)> Lines((double Weight, One[] Values)[] groups, One[][] places)
    {
        var (scatter, freedom) = Scatter(places);
        yield return (scatter * Math.Sqrt(groups.Sum(g => g.Weight * g.Weight / g.Values.Length)), freedom);
        const double sure = double.PositiveInfinity;
        var si = _dimension == Dimension.Length ? 1e-9 : 1;
        yield return (Math.Sqrt(groups.Sum(g => Square(g.Weight * g.Values.Max(v => v.Study?.Reproducibility ?? 0) / si))), sure);
        yield return (Math.Sqrt(groups.SelectMany(Shares).Sum(s => Square(s.Weight * s.Values.Max(v => v.Step) / Math.Sqrt(12)))), sure);
        yield return (Shared(groups, v => v.Limit), sure);
        yield return (Shared(groups, v => v.Reference), sure);
        var warmth = groups.Sum(g => g.Weight * g.Values.Average(v => v.Warmth)) * (_material?.ExpansionHalfWidth ?? 0);
        yield return (Math.Abs(warmth) / Math.Sqrt(3), sure);
    }

    /// <summary>One instrument is wrong alike each time: within it weights add with their signs, between instruments as squares.</summary>
    private static double Shared((double Weight, One[] Values)[] groups, Func<One, double> u) => Math.Sqrt(groups.SelectMany(Shares)
        .GroupBy(s => s.Instrument, StringComparer.Ordinal).Sum(g => Square(g.Sum(s => s.Weight) * g.Max(s => s.Values.Max(u)))));

    private static IEnumerable<(string Instrument, double Weight, One[] Values)> Shares((double Weight, One[] Values) group) =>
        group.Values.GroupBy(v => v.Instrument, StringComparer.Ordinal).Select(g => (g.Key, group.Weight * g.Count() / group.Values.Length, g.ToArray()));

    /// <summary>Pooled over places; a gauge study that found more stands before it.</summary>
    private (double, double) Scatter(One[][] places)
    {
        var freedom = places.Sum(p => p.Length - 1);
        var seen = freedom == 0 ? 0 : Math.Sqrt(places.Sum(p => p.Sum(v => Square(v.Point - Mean(p)))) / freedom);
        var si = _dimension == Dimension.Length ? 1e-9 : 1;
        var study = places.SelectMany(p => p).Select(v => v.Study).OfType<GaugeCapability>().MaxBy(s => s.Repeatability);
        return study is not null && study.Repeatability / si >= seen ? (study.Repeatability / si, study.DegreesOfFreedom) : (seen, freedom == 0 ? double.PositiveInfinity : freedom);
    }

    private One Value(Reading reading, Taken taken, InstrumentState? gauge, GaugeCapability? study)
    {
        var point = PointOf(reading)!.Value;
        var warmer = _dimension == Dimension.Length ? (taken.Temperature ?? ReferenceTemperature) - ReferenceTemperature : 0;
        var limit = NumberOf(gauge?.LimitOfError) ?? 0;
        return new One(
            point * (1 - ((_material?.ExpansionPerKelvin ?? 0) * warmer)), reading.At, taken.Instrument ?? "", NumberOf(gauge?.Resolution) ?? LastDigit(reading, point),
            gauge?.ErrorModel == ErrorModel.ExpandedK2 ? limit / 2 : limit / Math.Sqrt(3), NumberOf(gauge?.ReferenceUncertainty) ?? 0, point * warmer, study);
    }

    private double? NumberOf(Quantity? quantity) => quantity?.Kind == _dimension ? CheckedValue.Number(quantity) : null;

    private double? PointOf(Reading reading) => _dimension != Dimension.Length ? reading.Si
        : reading.Low is { } low && reading.Low == reading.High ? low.Nanometres : null;

    private double LastDigit(Reading reading, double point)
    {
        if (_dimension == Dimension.Count || !decimal.TryParse(reading.AsSent, NumberStyles.Float, CultureInfo.InvariantCulture, out var sent) || sent == 0)
            return 0;
        return Math.Abs(point / (double)sent) * Math.Pow(10, -sent.Scale);
    }

    private static double Mean(One[] values) => values.Average(v => v.Point);

    private static double Square(double x) => x * x;

    private sealed record One(double Point, string? Place, string Instrument, double Step, double Limit, double Reference, double Warmth, GaugeCapability? Study);
}
