using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Reasons;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Clearances;

/// <summary>A clearance with all its parts at another temperature than 20 °C (ISO 1).</summary>
/// <param name="When"><c>cold</c> or <c>hot</c>.</param>
/// <param name="Kelvin">The temperature of all parts.</param>
/// <param name="Gap">What is known of the gap there; basis none when a material or a length is not known.</param>
/// <param name="Window">The window there, if the family states one.</param>
/// <param name="Outcome">That gap against that window; not assessed without one.</param>
/// <param name="Reasons">Why.</param>
public sealed record ThermalGap(string When, double Kelvin, Estimate Gap, Limits? Window, Outcome Outcome, ImmutableArray<Reason> Reasons)
{
    /// <summary>20 °C (ISO 1) in kelvin.</summary>
    public const double Reference = 293.15;

    /// <summary>The gap at the temperatures that a loop states; none when it states none.</summary>
    internal static ImmutableArray<ThermalGap> Of(ClearanceLoop loop, Estimate gap, ImmutableArray<TermValue> terms, UnitView view) => loop.Thermal is not { } thermal
        ? []
        : [At("cold", thermal.Cold, thermal.ColdWindow, loop, gap, terms, view), At("hot", thermal.Hot, thermal.HotWindow, loop, gap, terms, view)];

    private static ThermalGap At(
        string when, double kelvin, Limits? window, ClearanceLoop loop, Estimate gap, ImmutableArray<TermValue> terms, UnitView view)
    {
        if (!double.IsFinite(kelvin) || kelvin <= 0)
            throw new ArgumentException($"The {when} temperature of {loop.Id} is not a temperature in kelvin.", nameof(kelvin));
        if (gap.Value is not Exact atReference)
            return new ThermalGap(when, kelvin, TermValue.Unknown, window, Outcome.NotAssessed, []);
        if (terms.FirstOrDefault(t => t.Term.Of is not Fixed && (t.Estimate.Value is null || MaterialOf(t.Term, view) is null)) is { } blank)
            return new ThermalGap(when, kelvin, TermValue.Unknown, window, Outcome.NotAssessed, [Because.Of("thermal-needs-material-and-length", loop.Id, ("of", blank.Name))]);
        var (change, u) = Growth(terms, kelvin - Reference, view);
        var there = gap with
        {
            Value = new Exact(atReference.Value + Length.NearestToMetres(change)),
            StandardUncertainty = Math.Sqrt((gap.StandardUncertainty * gap.StandardUncertainty) + (u * u)),
        };
        if (window is null)
            return new ThermalGap(when, kelvin, there, null, Outcome.NotAssessed, [Because.Of("thermal-value-only", loop.Id, ("when", when))]);
        var judged = Conformance.Assess(loop.Id, there, window, view.Snapshot.Policy.For(loop.Criticality));
        return new ThermalGap(when, kelvin, there, window, judged.Outcome, judged.Reasons);
    }

    private static ThermalGrowth Growth(ImmutableArray<TermValue> terms, double warmer, UnitView view) => ThermalGrowth.Of(
        terms.Where(t => t.Term.Of is not Fixed).Select(t => (MaterialOf(t.Term, view)!, t.Estimate.Value!.InSi * t.Term.Numerator / t.Term.Denominator)), warmer);

    private static Material? MaterialOf(Term term, UnitView view)
    {
        var kind = term.Of switch
        {
            OfPart part => view.Family.KindAt(part.At.Position),
            OfSeries of => view.Family.Series.TryGetValue(of.Series, out var series) ? view.Family.Kinds.GetValueOrDefault(series.Kind) : null,
            _ => null,
        };
        return kind?.Material is { } id ? view.Family.Materials.GetValueOrDefault(id) : null;
    }
}
