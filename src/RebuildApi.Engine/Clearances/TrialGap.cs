using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Clearances;

/// <summary>What the trial assemblies say of a gap, carried over from the pieces of the trial to the pieces that count now.</summary>
/// <param name="Estimate">The gap; a value, or only bounds when it was tight or off the gauge.</param>
/// <param name="Reading">The readings that it rests on.</param>
/// <param name="Trial">The trial assembly itself.</param>
internal sealed record TrialGap(Estimate Estimate, GapReading Reading, TrialAssembly Trial)
{
    /// <summary>
    /// The gap with the pieces of <paramref name="now"/> in place, out of the gap read with the pieces of the trial:
    /// g = read + Σ coefficient × (thickness now − thickness then). A piece that was in the trial and is in place now adds no doubt.
    /// </summary>
    public static TrialGap Of(TrialAssembly trial, ImmutableArray<(Term Term, Estimate? Now, ImmutableArray<string> Members)> now, UnitView view)
    {
        var reading = GapReading.Of(trial);
        var terms = ImmutableArray.CreateBuilder<TermValue>();
        terms.Add(TermValue.Of(One, "gap-read", ReadEstimate(trial, reading, view)));
        foreach (var (term, thickness, members) in now)
            AddExchange(terms, trial, term, thickness, members, view.Family);
        var sum = LoopValue.Sum(terms.ToImmutable()).Estimate;
        return new TrialGap(sum with { Basis = EstimateBasis.Trial }, reading, trial);
    }

    private static Term One { get; } = new(new Fixed(Length.Zero), 1);

    private static void AddExchange(
        ImmutableArray<TermValue>.Builder terms, TrialAssembly trial, Term term, Estimate? now, ImmutableArray<string> members, FamilyIndex family)
    {
        var of = (OfSeries)term.Of;
        var then = trial.Pieces.Where(p => p.Position == of.Position).ToImmutableArray();
        if (now is not null && !members.IsEmpty && members.SequenceEqual(then.Select(p => p.Member).Order(StringComparer.Ordinal)))
            return;
        if (now is not null)
            terms.Add(TermValue.Of(term, $"{of.Series} at {of.Position}", now));
        var back = term with { Numerator = -term.Numerator };
        foreach (var piece in then)
            terms.Add(TermValue.Of(back, $"{piece.Member} in trial {trial.Id}", TermValue.Within(piece.Thickness, family.Series[piece.Series].Tolerance)));
    }

    /// <summary>Type A: s/√n; Type B: the instrument's resolution step/√12, its limit of error and the standard it was set by (JCGM 100:2008, 4.2 and 4.3).</summary>
    private static Estimate ReadEstimate(TrialAssembly trial, GapReading reading, UnitView view)
    {
        var instrument = TypeB(trial, view.Instrument(trial.Taken.Instrument));
        if (reading.Mean is not { } mean)
        {
            var known = reading.AtLeast is not null || reading.AtMost is not null;
            return new Estimate(null, instrument, null, Quantity(reading.AtLeast), Quantity(reading.AtMost), known ? EstimateBasis.Trial : EstimateBasis.None, []);
        }

        var n = trial.Gap.Length;
        var variance = n < 2 ? 0 : trial.Gap.Sum(r => Math.Pow((r.Low!.Value - mean).InMetres, 2)) / (n - 1) / n;
        var u = Math.Sqrt(variance + (instrument * instrument));
        double? freedom = variance > 0 ? (n - 1) * Math.Pow(u, 4) / (variance * variance) : null;
        return new Estimate(new Exact(mean), u, freedom, null, null, EstimateBasis.Trial, []);
    }

    private static Exact? Quantity(Length? length) => length is { } l ? new Exact(l) : null;

    /// <summary>Of an instrument that is not known, the digits of the readings say how finely it was read; its error stays unknown.</summary>
    private static double TypeB(TrialAssembly trial, InstrumentState? instrument)
    {
        if (instrument is null)
            return trial.Gap.Select(r => new Scale(Dimension.Length).LastDigit(r) ?? 0).DefaultIfEmpty().Max() * 1e-9 / Math.Sqrt(12);
        var scale = new Scale(Dimension.Length);
        var (error, reference) = (InstrumentErrors.OfLimit(instrument, scale), InstrumentErrors.OfReference(instrument, scale));
        var resolution = InstrumentErrors.OfStep(scale.Of(instrument.Resolution) ?? 0);
        return Math.Sqrt((resolution * resolution) + (error * error) + (reference * reference)) * scale.InSi;
    }
}
