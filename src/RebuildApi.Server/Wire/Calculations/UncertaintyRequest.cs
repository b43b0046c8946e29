using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>Readings, or the lines of a budget, to a value with its uncertainty. Exactly one of readings and budget.</summary>
/// <param name="Readings">Readings of one thing.</param>
/// <param name="Budget">Lines that are independent of one another.</param>
/// <param name="Dimension">What is measured.</param>
/// <param name="Report">Which statistic of the readings is wanted.</param>
/// <param name="Instrument">What the readings were taken with.</param>
/// <param name="Temperature">Temperature of part and instrument when they were taken; 20 °C when not said.</param>
/// <param name="InstrumentTemperature">Temperature of the instrument, where it is not that of the part.</param>
/// <param name="TemperatureHalfWidth">How far off the temperatures may be, as a half-width.</param>
/// <param name="Material">What the part is made of.</param>
/// <param name="Study">What a gauge study found of the instrument here.</param>
/// <param name="Coverage">Probability with which the expanded interval holds the value.</param>
public sealed record UncertaintyRequest(
    [Entries(1, 500)] ImmutableArray<ReadingRequest>? Readings = null,
    [Entries(1, 100)] ImmutableArray<BudgetLineRequest>? Budget = null,
    Dimension Dimension = Dimension.Length,
    Statistic Report = Statistic.Mean,
    GaugeUsedRequest? Instrument = null,
    [Of(Dimension.Temperature)] SentQuantity? Temperature = null,
    [Of(Dimension.Temperature)] SentQuantity? InstrumentTemperature = null,
    SentQuantity? TemperatureHalfWidth = null,
    ExpansionRequest? Material = null,
    StudyFoundRequest? Study = null,
    [Between(0.5, 0.9999)] decimal Coverage = 0.95m);

/// <summary>One line of a budget: a standard uncertainty, or a half-width with how it is spread.</summary>
/// <param name="Name">What it comes from.</param>
/// <param name="StandardUncertainty">Its standard uncertainty.</param>
/// <param name="HalfWidth">Half-width of what it may be, instead.</param>
/// <param name="Spread">How it is spread within the half-width.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom; many when not said.</param>
/// <param name="Sensitivity">What the result changes for a change of one; its size counts.</param>
public sealed record BudgetLineRequest(
    [Words(100)] string Name,
    SentQuantity? StandardUncertainty = null,
    SentQuantity? HalfWidth = null,
    [OneOf("rectangular", "triangular", "arcsine")] string Spread = "rectangular",
    [Between(1, 1e9)] decimal? DegreesOfFreedom = null,
    [Between(-1e9, 1e9)] decimal Sensitivity = 1m)
{
    /// <summary>To the contract; null with a complaint.</summary>
    public Contribution? ToContract(Dimension dimension, string pointer, Complaints complaints)
    {
        if (StandardUncertainty is null == HalfWidth is null)
        {
            complaints.Add(pointer, FieldProblems.Contradiction, "A line has exactly one of standardUncertainty and halfWidth.");
            return null;
        }

        var u = Differences.Read(StandardUncertainty, dimension, pointer + "/standardUncertainty", complaints)
            ?? Differences.Read(HalfWidth, dimension, pointer + "/halfWidth", complaints) / Divisor;
        return u is { } known ? new Contribution(Name, Math.Abs((double)Sensitivity) * known, (double?)DegreesOfFreedom, 0) : null;
    }

    // JCGM 100:2008, 4.3.7 and 4.3.9; JCGM 101:2008, 6.4.6 for the arcsine.
    private double Divisor => Math.Sqrt(Spread switch { "triangular" => 6, "arcsine" => 2, _ => 3 });
}

/// <summary>What readings were taken with.</summary>
/// <param name="Resolution">Smallest step that can be read.</param>
/// <param name="LimitOfError">Largest error that its calibration allows, as a half-width.</param>
/// <param name="ErrorModel">How that error is spread.</param>
/// <param name="ReferenceUncertainty">Standard uncertainty (k = 1) of the standard that it was calibrated or set against.</param>
/// <param name="Expansion">How its scale grows; taken as right at any temperature when not said.</param>
public sealed record GaugeUsedRequest(
    SentQuantity Resolution,
    SentQuantity? LimitOfError = null,
    ErrorModel ErrorModel = ErrorModel.Rectangular,
    SentQuantity? ReferenceUncertainty = null,
    ExpansionRequest? Expansion = null);

/// <summary>How a material or the scale of an instrument grows with temperature, in millionths per kelvin.</summary>
/// <param name="PerMillionKelvin">Expansion coefficient: 11.5 for steel.</param>
/// <param name="HalfWidth">Half-width of what is not known of it.</param>
public sealed record ExpansionRequest([Between(-100, 1000)] decimal PerMillionKelvin, [Between(0, 100)] decimal HalfWidth = 0m)
{
    internal double PerKelvin => (double)PerMillionKelvin * 1e-6;

    internal double HalfWidthPerKelvin => (double)HalfWidth * 1e-6;

    /// <summary>To the contract.</summary>
    public Material ToContract(string id) => new(
        id, Text.English(id, id), PerKelvin, HalfWidthPerKelvin, new Source(SourceKind.Judgement, "as sent"));
}

/// <summary>What a gauge study found.</summary>
/// <param name="Repeatability">Standard deviation of one person's repeats.</param>
/// <param name="Reproducibility">Standard deviation between persons or benches.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom behind the repeatability.</param>
public sealed record StudyFoundRequest(SentQuantity Repeatability, SentQuantity Reproducibility, [Between(1, 1e6)] decimal DegreesOfFreedom);
