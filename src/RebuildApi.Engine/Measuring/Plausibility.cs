using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>Looks at a measurement as it comes in and says what is odd about it.</summary>
public static class Plausibility
{
    /// <summary>The doubts about the plain readings of a measurement; bounds are taken as they are.</summary>
    /// <param name="measurement">What came in.</param>
    /// <param name="characteristic">What was measured.</param>
    /// <param name="newLimits">Limits when new where the part sits, if known.</param>
    /// <param name="service">Service limits where the part sits, if known.</param>
    /// <param name="instrument">The instrument, if known.</param>
    /// <returns>At most one doubt of each code for each reading, in the order of the readings.</returns>
    public static ImmutableArray<Doubt> Check(
        Measurement measurement, Characteristic characteristic, Limits? newLimits, Limits? service, InstrumentState? instrument)
    {
        var scale = new Scale(characteristic.Dimension);

        // The limits of a runout are those of a difference: they say nothing of where its single readings lie.
        var band = characteristic.Report == Statistic.Spread ? null : PlausibleBand.Of(scale, newLimits, service);
        var step = scale.Of(instrument?.Resolution);
        var points = measurement.Readings.Select(r => scale.Of(r)).ToArray();
        return
        [
            .. measurement.Readings.SelectMany((reading, index) => points[index] is { } point
                ? new PlausibilityOfReading(characteristic, scale, band, step, SiblingsOf(points, index, step ?? scale.LastDigit(reading), band), index, reading, point) { Instrument = instrument }.Doubts()
                : []),
        ];
    }

    /// <summary>The doubts about the readings of a trial assembly. How large its gap is hangs on the pieces fitted, so that no limits are held against it.</summary>
    /// <param name="trial">What came in.</param>
    /// <param name="loop">The clearance.</param>
    /// <param name="instrument">The instrument, if known.</param>
    public static ImmutableArray<Doubt> Check(TrialAssembly trial, ClearanceLoop loop, InstrumentState? instrument) => Check(
        new Measurement(trial.Id, "", 1, loop.Id, trial.Gap, trial.Taken, null),
        new Characteristic(loop.Id, loop.Name, Dimension.Length, Statistic.Mean, 1, null, null, Distribution.None, loop.Criticality, null, []),
        null,
        null,
        instrument);

    private static Siblings? SiblingsOf(double?[] points, int index, double? step, PlausibleBand? band) =>
        Siblings.Of([.. points.Where((_, i) => i != index).OfType<double>()], step ?? 0, band);
}

/// <summary>One plain reading beside everything that may make it doubtful.</summary>
internal sealed record PlausibilityOfReading(
    Characteristic Characteristic, Scale Scale, PlausibleBand? Band, double? Step, Siblings? Siblings, int Index, Reading Reading, double Point)
{
    /// <summary>What it was read with, if known.</summary>
    public InstrumentState? Instrument { get; init; }

    public IEnumerable<Doubt> Doubts()
    {
        if (IsOutOfBand || IsFarFromSiblings)
        {
            foreach (var slip in Likeliest(SlipCandidates.Units(Point, Reading, Scale), SlipCandidates.Swaps(Point, Reading), SlipCandidates.Decimals(Point)))
                yield return Doubt(slip.Code, slip.Point, slip.Unit);
        }

        if (IsFarFromSiblings)
            yield return Doubt("far-from-siblings", Siblings!.Median, null);
        if (Step is { } step && IsFinerThan(step))
            yield return Doubt("finer-than-instrument", Math.Round(Point / step, MidpointRounding.AwayFromZero) * step, null);
        if (Instrument is not null && InstrumentStanding.IsOutside(Reading, Instrument, Scale))
            yield return Doubt("outside-instrument-range", NearestInRange(Instrument), null);
    }

    private bool IsOutOfBand => Band is not null && !Band.Contains(Point);

    private bool IsFarFromSiblings => Siblings is not null && !Siblings.Near(Point);

    /// <summary>Of each slip the candidate that fits best, if any fits everything that is known.</summary>
    private IEnumerable<Slip> Likeliest(params IEnumerable<Slip>[] slips)
    {
        var aim = Siblings is not null && (Band is null || Band.Contains(Siblings.Median)) ? Siblings.Median : Band?.Middle ?? Point;
        return slips
            .Select(candidates => candidates.Where(Fits).MinBy(s => Math.Abs(s.Point - aim)))
            .OfType<Slip>();
    }

    /// <summary>In the band; and, when it is the siblings that it stands apart from, near them.</summary>
    private bool Fits(Slip slip) => (Band is null || Band.Contains(slip.Point)) && (!IsFarFromSiblings || IsOutOfBand || Siblings!.Near(slip.Point));

    /// <summary>More digits than the instrument shows, and not by trailing zeros or a conversion of units.</summary>
    private bool IsFinerThan(double step)
    {
        const double Slack = 1e-6;
        var steps = Point / step;
        return Scale.LastDigit(Reading) < step * (1 - Slack) && Math.Abs(steps - Math.Round(steps)) > Slack * Math.Max(1, Math.Abs(steps));
    }

    private double NearestInRange(InstrumentState instrument) =>
        Math.Min(Math.Max(Point, Scale.Of(instrument.RangeLow) ?? Point), Scale.Of(instrument.RangeHigh) ?? double.PositiveInfinity);

    private Doubt Doubt(string code, double alternative, string? unit)
    {
        var quantity = Scale.Quantity(alternative);
        var arguments = ImmutableSortedDictionary<string, string>.Empty
            .Add("characteristic", Characteristic.Id)
            .Add("sent", Reading.AsSent)
            .Add("unit", Reading.Unit)
            .Add("reading", (Index + 1).ToString(CultureInfo.InvariantCulture))
            .Add(
                quantity is Exact ? "alternativeNm" : "alternative",
                quantity is Exact exact ? exact.Value.Nanometres.ToString(CultureInfo.InvariantCulture) : alternative.ToString("G10", CultureInfo.InvariantCulture));
        if (unit is not null)
            arguments = arguments.Add("otherUnit", unit);
        return new Doubt(code, Index, quantity, unit, new Reason(quantity is Exact ? code : code + "-si", arguments, Characteristic.Id));
    }
}
