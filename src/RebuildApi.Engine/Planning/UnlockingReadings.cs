using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Planning;

/// <summary>
/// Single dimensions of parts found that are not read yet, or in doubt, and after a favourable reading of which there is a plan. Each range is found by
/// putting readings on the whole unit: its ends open the way, what lies just outside does not.
/// </summary>
internal sealed class UnlockingReadings(PlanModel model, IPlanSolver solver, PlanEffort effort, CancellationToken cancellation)
{
    /// <summary>Readings that are put on the unit, all dimensions together: a person waits for the answer.</summary>
    private const int MostTries = 120;

    private int _left = MostTries;

    /// <summary>What reading would open the way, in stripping order.</summary>
    /// <param name="names">The demands that can't all be met.</param>
    /// <param name="places">The places that they are about.</param>
    public IEnumerable<PlanUnlock> Of(IReadOnlySet<string> names, IEnumerable<int> places) =>
        places.SelectMany(p => OpenAt(p, names)).Select(Unlock).OfType<PlanUnlock>();

    /// <summary>The lengths of the part found in a place that are open, and that a demand hangs on.</summary>
    private IEnumerable<OpenLength> OpenAt(int place, IReadOnlySet<string> names)
    {
        var of = model.Places[place];
        var found = of.Series is null ? of.Fits.ToList().FindIndex(f => f.Id == Places.FoundId) : -1;
        if (found < 0)
            yield break;
        var inDoubt = model.Standings[place][found].Verdicts.Where(v => v.Outcome is Outcome.NotAssessed or Outcome.Inconclusive).Select(v => v.Subject).ToHashSet(StringComparer.Ordinal);
        var mustBeProven = inDoubt.Count == 1 && names.Contains($"limit:proven:{of.Subject}");
        foreach (var c in model.Book.View.Family.Kinds[of.Position.Kind].Characteristics.Where(c => c is { Dimension: Dimension.Length, DerivedFrom: null } && c.Report != Statistic.Spread))
        {
            var open = new OpenLength(of, of.Fits[found].Parts[0].Component, c, model.Book);
            var isOpen = open.IsUnread || inDoubt.Contains($"{of.Subject}/{c.Id}");
            if (isOpen && open.Ends is not null && ((mustBeProven && inDoubt.Contains($"{of.Subject}/{c.Id}")) || Clearances(open.At).Any(names.Contains)))
                yield return open;
        }
    }

    /// <summary>The clearances that a dimension enters, by itself or through what is derived from it.</summary>
    private IEnumerable<string> Clearances(Address at) => model.Book.View.Family.Family.Loops
        .Where(l => l.Terms.Select(t => t.Of).OfType<OfPart>().Any(p => p.At == at || FollowsFrom(p.At, at))).Select(l => $"clearance:{l.Id}");

    private bool FollowsFrom(Address derived, Address at) => model.Book.View.Family.CharacteristicAt(derived) is { } c
        && Snapshots.Inputs.Of(c).Any(a => (a.IsOfKind ? new Address(derived.Position, a.Characteristic) : a) == at);

    private PlanUnlock? Unlock(OpenLength open)
    {
        var range = new ReadingRange(micrometres => Opens(open, micrometres)).In(open.Ends!.Value.Low, open.Ends.Value.High);
        if (range is not (var low, var high) || Plan(open, (low + high) / 2) is not { Solution.Exists: true } plan)
            return null;
        var reading = new UnlockReading(OpenLength.Of(low), OpenLength.Of(high), open.Readings, OpenLength.Of(1), open.ChanceOf(low, high));
        (string, object?)[] said = [("readings", reading.Readings), ("low", reading.Low), ("high", reading.High), ("step", reading.Step)];
        return new PlanUnlock(
            UnlockKind.Measurement, open.Subject, plan.Solution.Cost + model.BenchLabour,
            reading.Chance is { } chance
                ? Because.Of("unlock-reading-chance", open.Subject, [.. said, ("percent", Math.Round(100 * chance, 1))])
                : Because.Of("unlock-reading", open.Subject, said))
        {
            Reading = reading,
        };
    }

    private bool Opens(OpenLength open, long micrometres) => _left-- > 0 && Plan(open, micrometres) is { Solution.Exists: true };

    private FoundPlan? Plan(OpenLength open, long micrometres)
    {
        if (cancellation.IsCancellationRequested)
            return null;
        var read = new PlanModel(open.Book(micrometres), model.Request with { Effort = effort }, model.Hooks, model.Cuts, model, open.At.Position);
        return new PlanFinder(read, solver, cancellation).Find(PlanObjective.LeastCost);
    }
}

/// <summary>A length of a part found that is not read yet, or in doubt.</summary>
/// <param name="Place">Where the part is.</param>
/// <param name="Part">The part.</param>
/// <param name="Characteristic">What is read.</param>
/// <param name="Known">What is known of the unit.</param>
internal sealed record OpenLength(PlanPlace Place, Component Part, Characteristic Characteristic, EstimateBook Known)
{
    private const decimal PerMicrometre = 1000;

    public Address At { get; } = new(Place.Position.Id, Characteristic.Id);

    public string Subject => $"{Place.Subject}/{Characteristic.Id}";

    public bool IsUnread => Estimate.Basis is EstimateBasis.None or EstimateBasis.Drawing;

    /// <summary>How many readings are put on it: as many as make a measurement.</summary>
    public int Readings => Characteristic.MinimumReadings;

    /// <summary>Between what it may go back, whole micrometres inside; none where that is open on a side that no drawing closes.</summary>
    public (long Low, long High)? Ends
    {
        get
        {
            var (service, drawn) = (Known.View.Family.ServiceLimitsAt(At), Known.View.Family.NewLimitsAt(At));
            return (service?.Low ?? drawn?.Low, service?.High ?? drawn?.High) is (Exact low, Exact high) && low.Value < high.Value
                ? ((long)Math.Ceiling(low.Value.Nanometres / PerMicrometre), (long)Math.Floor(high.Value.Nanometres / PerMicrometre))
                : null;
        }
    }

    private Estimate Estimate => Known.Of(At, Place.Index);

    public static Length Of(long micrometres) => new((long)(micrometres * PerMicrometre));

    /// <summary>What is known of the unit once it is read so, all readings alike and to the micrometre.</summary>
    public EstimateBook Book(long micrometres)
    {
        var reading = Contracts.Reading.Of(Of(micrometres), (micrometres / 1000m).ToString("0.000", CultureInfo.InvariantCulture), "mm");
        var measured = new Measurement(
            $"if:{Subject}", Part.Id, Part.Revision, Characteristic.Id, [.. Enumerable.Repeat(reading, Readings)], new Taken(null, null, "", "", DateTimeOffset.UnixEpoch, null), null);
        var snapshot = Known.View.Snapshot;
        return new EstimateBook(new Snapshots.UnitView(snapshot with { Measurements = snapshot.Measurements.Add(measured) }, Known.View.Family, string.Empty));
    }

    /// <summary>Chance that it lies between two readings by what is known of it now: its readings, or its drawing as the family spreads it.</summary>
    public double? ChanceOf(long low, long high)
    {
        if (Estimate is not { Value: Exact middle, StandardUncertainty: > 0 } known || known.Basis is EstimateBasis.None)
            return null;
        var (from, to) = (low * 1e-6, high * 1e-6);
        var drawn = Known.View.Family.NewLimitsAt(At);
        var share = known.Basis == EstimateBasis.Drawing && Characteristic.Unmeasured != Distribution.Normal && drawn is { Low: Exact least, High: Exact most }
            ? Below(to, least.Value.InMetres, most.Value.InMetres) - Below(from, least.Value.InMetres, most.Value.InMetres)
            : Numerics.StandardNormal.Cdf((to - middle.Value.InMetres) / known.StandardUncertainty) - Numerics.StandardNormal.Cdf((from - middle.Value.InMetres) / known.StandardUncertainty);
        return Math.Clamp(share, 0, 1);
    }

    /// <summary>Share of a drawing's width below a value: with equal chance everywhere, or most likely in the middle.</summary>
    private double Below(double value, double low, double high)
    {
        var t = Math.Clamp((value - low) / (high - low), 0, 1);
        return Characteristic.Unmeasured != Distribution.Triangular ? t : t < 0.5 ? 2 * t * t : 1 - (2 * (1 - t) * (1 - t));
    }
}
