using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>What is known of a value.</summary>
/// <param name="Value">The best estimate; none when only bounds are known.</param>
/// <param name="StandardUncertainty">Standard uncertainty in SI; not negative.</param>
/// <param name="DegreesOfFreedom">Effective degrees of freedom; none means infinite.</param>
/// <param name="Low">A lower bound that is known, if any (censored readings).</param>
/// <param name="High">An upper bound that is known, if any.</param>
/// <param name="Basis">What it rests on.</param>
/// <param name="Budget">What the uncertainty is made of.</param>
public sealed record Estimate(
    Quantity? Value,
    double StandardUncertainty,
    double? DegreesOfFreedom,
    Quantity? Low,
    Quantity? High,
    EstimateBasis Basis,
    ImmutableArray<Contribution> Budget);

/// <summary>What an estimate rests on.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<EstimateBasis>))]
public enum EstimateBasis
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>Readings.</summary>
    Measured,

    /// <summary>The drawing limits of a new part.</summary>
    Drawing,

    /// <summary>Other characteristics, by a formula.</summary>
    Derived,

    /// <summary>A trial assembly.</summary>
    Trial,

    /// <summary>Measured parts and a trial assembly together.</summary>
    Combined,
}

/// <summary>One line of an uncertainty budget.</summary>
/// <param name="Name">What it comes from: <c>repeatability</c>, <c>resolution</c>, <c>limit-of-error</c>, <c>temperature</c>, or an address.</param>
/// <param name="StandardUncertainty">Its standard uncertainty in SI, with its sensitivity applied.</param>
/// <param name="DegreesOfFreedom">Its degrees of freedom; none means infinite.</param>
/// <param name="Share">Its share of the variance, 0..1.</param>
public sealed record Contribution(string Name, double StandardUncertainty, double? DegreesOfFreedom, double Share);
