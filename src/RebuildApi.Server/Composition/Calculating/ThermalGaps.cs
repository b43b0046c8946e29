using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Conformity;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Composition;

/// <summary>A clearance at the temperatures asked for.</summary>
/// <param name="members">Members with their materials.</param>
/// <param name="policy">The rule.</param>
/// <param name="show">In which units.</param>
public sealed class ThermalGaps(ImmutableArray<(TermValue Term, Material Material)> members, Policy policy, Display show)
{
    private readonly Estimate _gap = LoopValue.Sum([.. members.Select(m => m.Term)]).Estimate;

    /// <summary>The gap at 20 °C.</summary>
    public QuantityWire Gap => show.Of(_gap.Value!);

    /// <summary>The gap at one temperature.</summary>
    public ThermalPointWire At(double kelvin, Limits? window)
    {
        var growth = ThermalGrowth.Of(
            members.Select(m => (m.Material, m.Term.Estimate.Value!.InSi * m.Term.Term.Numerator / m.Term.Term.Denominator)), kelvin - ThermalGap.Reference);
        var there = _gap with
        {
            Value = new Exact(((Exact)_gap.Value!).Value + Length.NearestToMetres(growth.Change)),
            StandardUncertainty = Math.Sqrt((_gap.StandardUncertainty * _gap.StandardUncertainty) + (growth.StandardUncertainty * growth.StandardUncertainty)),
        };
        var judged = window is null ? null : Conformance.Assess("gap", there, window, policy);
        return new(
            show.Si(kelvin, Dimension.Temperature),
            show.Metres(growth.Change),
            show.Of(there.Value),
            show.Metres(there.StandardUncertainty),
            judged?.Outcome ?? Outcome.NotAssessed,
            Numbers.Finite(judged?.Probability),
            [.. (judged?.Reasons ?? []).Select(ReasonWire.From)]);
    }
}
