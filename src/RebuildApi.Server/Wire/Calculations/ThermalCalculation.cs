using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>A clearance at other temperatures than 20 °C, all its members at the same temperature.</summary>
/// <param name="Members">The members.</param>
/// <param name="Materials">What they are made of.</param>
/// <param name="At">The temperatures.</param>
/// <param name="Rule">The decision rule.</param>
/// <param name="Probability">How sure it must be.</param>
public sealed record ThermalRequest(
    [Entries(1, 60)] ImmutableArray<ThermalMemberRequest> Members,
    [Entries(1, 20)] ImmutableArray<NamedExpansionRequest> Materials,
    [Entries(1, 20)] ImmutableArray<ThermalPointRequest> At,
    DecisionRule Rule = DecisionRule.Guarded,
    [Between(0.5001, 0.999999)] decimal Probability = 0.95m);

/// <summary>One member.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Length">Its dimension at 20 °C.</param>
/// <param name="Material">Id of its material.</param>
/// <param name="Numerator">Signed coefficient, not 0: positive opens the gap.</param>
/// <param name="Denominator">Its denominator.</param>
/// <param name="StandardUncertainty">Standard uncertainty of the dimension.</param>
public sealed record ThermalMemberRequest(
    [Words(100)] string Name,
    [Of(Dimension.Length)] SentQuantity Length,
    [Id] string Material,
    [Between(-1000, 1000)] int Numerator = 1,
    [Between(1, 1000)] int Denominator = 1,
    SentQuantity? StandardUncertainty = null);

/// <summary>A material. Members of one material share its coefficient, and so the doubt about it.</summary>
/// <param name="Id">Its id in this request.</param>
/// <param name="PerMillionKelvin">Expansion coefficient in millionths per kelvin: 11.5 for steel.</param>
/// <param name="HalfWidth">Half-width of what is not known of it.</param>
public sealed record NamedExpansionRequest([Id] string Id, [Between(-100, 1000)] decimal PerMillionKelvin, [Between(0, 100)] decimal HalfWidth = 0m)
{
    /// <summary>To the contract.</summary>
    public Material ToContract() => new ExpansionRequest(PerMillionKelvin, HalfWidth).ToContract(Id);
}

/// <summary>One temperature.</summary>
/// <param name="Temperature">The temperature of all members.</param>
/// <param name="Window">What the gap must be there.</param>
public sealed record ThermalPointRequest([Of(Dimension.Temperature)] SentQuantity Temperature, WindowRequest? Window = null);

/// <summary>A clearance cold and hot.</summary>
/// <param name="Gap">The gap at 20 °C.</param>
/// <param name="At">The gap at each temperature.</param>
public sealed record ThermalWire(QuantityWire Gap, ImmutableArray<ThermalPointWire> At);

/// <summary>The gap at one temperature.</summary>
/// <param name="Temperature">The temperature.</param>
/// <param name="Change">How much the gap changes from 20 °C.</param>
/// <param name="Gap">The gap there.</param>
/// <param name="StandardUncertainty">Its standard uncertainty, that of the coefficients included.</param>
/// <param name="Outcome">That gap against its window; not assessed without one.</param>
/// <param name="Probability">Chance of lying in the window.</param>
/// <param name="Reasons">Why.</param>
public sealed record ThermalPointWire(
    QuantityWire Temperature, QuantityWire Change, QuantityWire Gap, QuantityWire StandardUncertainty, Outcome Outcome, double? Probability, ImmutableArray<ReasonWire> Reasons);
