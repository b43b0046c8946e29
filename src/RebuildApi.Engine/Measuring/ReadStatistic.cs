using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>A statistic of plain readings: a weighted sum of groups of readings, each group being the mean of repeats.</summary>
/// <param name="Point">Its value on the scale.</param>
/// <param name="Groups">What it is a sum of.</param>
/// <param name="Repeats">How far repeats scatter.</param>
/// <param name="FormHalfWidth">Half-width of the form that one number cannot show, on the scale; 0 when there is none.</param>
internal sealed record ReadStatistic(double Point, ImmutableArray<ReadGroup> Groups, Scatter Repeats, double FormHalfWidth)
{
    public static ReadStatistic Of(ImmutableArray<ReadValue> values, Statistic report, Scale scale)
    {
        if (report == Statistic.Mean)
        {
            var all = new ReadGroup(values, 1);
            return new ReadStatistic(all.Mean, [all], Scatter.Within([values], scale), 0);
        }

        var places = Places(values);
        var repeats = Scatter.Within(places, scale);
        var smallest = places.MinBy(p => p.Average(v => v.Point));
        var largest = places.MaxBy(p => p.Average(v => v.Point));
        ImmutableArray<ReadGroup> groups = report switch
        {
            Statistic.Min => [new ReadGroup(smallest, 1)],
            Statistic.Max => [new ReadGroup(largest, 1)],
            Statistic.Spread => [new ReadGroup(largest, 1), new ReadGroup(smallest, -1)],
            _ => [new ReadGroup(smallest, 0.5), new ReadGroup(largest, 0.5)],
        };
        var form = report == Statistic.MinAndMax ? (groups[1].Mean - groups[0].Mean) / 2 : 0;
        return new ReadStatistic(groups.Sum(g => g.Weight * g.Mean), groups, repeats, form);
    }

    /// <summary>The budget in SI.</summary>
    public IEnumerable<Contribution> Lines(ReadingSet readings)
    {
        var si = readings.Scale.InSi;
        yield return new Contribution("repeatability", Repeatability * si, Repeats.DegreesOfFreedom, 0);
        yield return new Contribution("between-benches", Reproducibility, null, 0);
        yield return new Contribution("resolution", Resolution * si, null, 0);
        yield return new Contribution("limit-of-error", LimitOfError * si, null, 0);
        yield return new Contribution("reference-standard", Shared(i => i.ReferenceUncertainty) * si, null, 0);
        yield return new Contribution("expansion", Common(w => w.PartExpansion) * si, null, 0);
        yield return new Contribution("temperature", Common(w => w.PartTemperature) * si, null, 0);
        yield return new Contribution("instrument-expansion", Common(w => w.InstrumentExpansion) * si, null, 0);
        yield return new Contribution("instrument-temperature", Common(w => w.InstrumentTemperature) * si, null, 0);
        yield return new Contribution("form", InstrumentErrors.OfHalfWidth(FormHalfWidth) * si, null, 0);
    }

    /// <summary>s·√Σ(w²/n): repeats average out.</summary>
    private double Repeatability => Repeats.StandardDeviation * Math.Sqrt(Groups.Sum(g => g.Weight * g.Weight / g.Values.Length));

    /// <summary>What a study found between persons does not average out over one person's repeats. In SI.</summary>
    private double Reproducibility => Math.Sqrt(Groups.Sum(g => Square(g.Weight * g.Values.Max(v => v.Study?.Reproducibility ?? 0))));

    /// <summary>Rounding does not average out: repeats of one part on one instrument round alike.</summary>
    private double Resolution => Math.Sqrt(Groups.SelectMany(g => g.ByInstrument()).Sum(i => Square(i.Weight * InstrumentErrors.OfStep(i.Step))));

    /// <summary>One instrument is wrong by the same amount each time, so within it weights add with their signs; two instruments are independent.</summary>
    private double LimitOfError => Shared(i => i.LimitUncertainty);

    /// <summary>All readings are of one part in one room: what temperature does to them adds up, or cancels in a difference.</summary>
    private double Common(Func<Warmth, double> of) => Math.Abs(Groups.Sum(g => g.Weight * g.Values.Average(v => of(v.Warmth))));

    private double Shared(Func<InstrumentShare, double> uncertainty) => Math.Sqrt(Groups
        .SelectMany(g => g.ByInstrument())
        .GroupBy(i => i.Instrument)
        .Sum(i => Square(i.Sum(g => g.Weight) * i.Max(uncertainty))));

    /// <summary>Readings at a named place are repeats; those without one stand alone, since they may be of different planes.</summary>
    private static ImmutableArray<ImmutableArray<ReadValue>> Places(ImmutableArray<ReadValue> values) =>
    [
        .. values.Where(v => v.Place is not null).GroupBy(v => v.Place).Select(g => g.ToImmutableArray()),
        .. values.Where(v => v.Place is null).Select(v => ImmutableArray.Create(v)),
    ];

    private static double Square(double x) => x * x;
}

/// <summary>Repeats whose mean enters a statistic.</summary>
/// <param name="Values">At least one.</param>
/// <param name="Weight">Its signed weight.</param>
internal sealed record ReadGroup(ImmutableArray<ReadValue> Values, double Weight)
{
    public double Mean { get; } = Values.Average(v => v.Point);

    /// <summary>What each instrument has in the group.</summary>
    public IEnumerable<InstrumentShare> ByInstrument() => Values
        .GroupBy(v => v.InstrumentId ?? "")
        .Select(g => new InstrumentShare(
            g.Key, Weight * g.Count() / Values.Length, g.Max(v => v.Step), g.Max(v => v.LimitUncertainty), g.Max(v => v.ReferenceUncertainty)));
}

/// <summary>The weight of one instrument in a group, with the coarsest step and the largest uncertainties that it brought.</summary>
/// <param name="Instrument">Its id; empty when it was not named.</param>
/// <param name="Weight">Its signed weight.</param>
/// <param name="Step">Its step, on the scale.</param>
/// <param name="LimitUncertainty">Standard uncertainty from its limit of error, on the scale.</param>
/// <param name="ReferenceUncertainty">Standard uncertainty of the standard it was set by, on the scale.</param>
internal readonly record struct InstrumentShare(string Instrument, double Weight, double Step, double LimitUncertainty, double ReferenceUncertainty);

/// <summary>Scatter of repeats, pooled over places: s² = Σ(x − x̄)²/ν, ν = Σ(n − 1).</summary>
/// <param name="StandardDeviation">s on the scale; 0 when nothing was repeated and no study is known.</param>
/// <param name="DegreesOfFreedom">ν; none when nothing was repeated and no study is known.</param>
internal sealed record Scatter(double StandardDeviation, double? DegreesOfFreedom)
{
    /// <summary>The scatter seen here; or that of the instrument's gauge study, which rests on more, unless this part scatters worse.</summary>
    public static Scatter Within(ImmutableArray<ImmutableArray<ReadValue>> places, Scale scale)
    {
        var seen = Seen(places);
        var study = places.SelectMany(p => p).Select(v => v.Study).OfType<GaugeCapability>().MaxBy(s => s.Repeatability);
        return study is not null && study.Repeatability / scale.InSi >= seen.StandardDeviation
            ? new Scatter(study.Repeatability / scale.InSi, study.DegreesOfFreedom)
            : seen;
    }

    private static Scatter Seen(ImmutableArray<ImmutableArray<ReadValue>> places)
    {
        var freedom = places.Sum(p => p.Length - 1);
        if (freedom == 0)
            return new Scatter(0, null);
        var squares = places.Sum(place =>
        {
            var mean = place.Average(v => v.Point);
            return place.Sum(v => (v.Point - mean) * (v.Point - mean));
        });
        return new Scatter(Math.Sqrt(squares / freedom), freedom);
    }
}
