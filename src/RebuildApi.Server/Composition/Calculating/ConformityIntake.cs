using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Composition;

/// <summary>What a conformity calculation was asked, read.</summary>
/// <param name="Estimate">What is known of the value.</param>
/// <param name="Low">Low limit.</param>
/// <param name="High">High limit.</param>
/// <param name="Policy">The rule.</param>
/// <param name="Process">The process, if one was sent.</param>
public sealed record ConformityIntake(Estimate Estimate, Quantity? Low, Quantity? High, Policy Policy, ProcessRead? Process)
{
    // Readings a thousand times finer or coarser than the process would take the integral of the risks for ever, and say nothing.
    private const double WidestRatio = 1000;

    /// <summary>Reads it; complaints say what is wrong.</summary>
    public static ConformityIntake Of(ConformityRequest sent, Complaints complaints)
    {
        if ((sent.Value is null) == (sent.AtLeast is null && sent.AtMost is null))
            complaints.Add("", FieldProblems.Contradiction, "Either value or bounds (atLeast, atMost) are needed, not both.");
        if (sent.Low is null && sent.High is null)
            complaints.Add("/low", FieldProblems.MissingField, "At least one limit is needed: low or high.");
        var d = sent.Dimension;
        var u = Differences.Read(sent.StandardUncertainty, d, "/standardUncertainty", complaints) ?? 0;
        var estimate = new Estimate(
            Points.Maybe(sent.Value, d, "/value", complaints), u, (double?)sent.DegreesOfFreedom,
            Points.Maybe(sent.AtLeast, d, "/atLeast", complaints), Points.Maybe(sent.AtMost, d, "/atMost", complaints), EstimateBasis.Measured, []);
        if (estimate.Low?.InSi > estimate.High?.InSi)
            complaints.Add("/atMost", FieldProblems.OutOfRange, "The bounds contradict each other: atLeast lies above atMost.", sent.AtMost!.Value.Text);
        var policy = Policy.Default with { Decision = sent.Rule, Probability = (double)sent.Probability };
        return new(estimate, Points.Maybe(sent.Low, d, "/low", complaints), Points.Maybe(sent.High, d, "/high", complaints), policy, ProcessOf(sent, u, complaints));
    }

    /// <summary>The limits.</summary>
    /// <exception cref="ArgumentException">They are upside down.</exception>
    public Limits Limits() => new(Low, High, null, new Source(SourceKind.Judgement, "as sent"));

    /// <summary>The risks over all parts of the process; none when no process was sent.</summary>
    public ProcessRisksWire? Risks()
    {
        if (Process is not { } p)
            return null;
        var (low, high) = (Low?.InSi ?? double.NegativeInfinity, High?.InSi ?? double.PositiveInfinity);
        return ProcessRisksWire.From(
            GlobalRisk.Of(p.Mean, p.Deviation, Estimate.StandardUncertainty, low, high, p.AcceptLow ?? low, p.AcceptHigh ?? high),
            SpecificRisk.Of(p.Mean, p.Deviation, low, high));
    }

    private static ProcessRead? ProcessOf(ConformityRequest sent, double u, Complaints complaints)
    {
        if (sent.Process is not { } process)
            return null;
        var deviation = Differences.Read(process.StandardDeviation, sent.Dimension, "/process/standardDeviation", complaints) ?? 0;
        if (!(deviation > 0) || !(u > 0) || deviation / u > WidestRatio || u / deviation > WidestRatio)
        {
            complaints.Add("/process/standardDeviation", FieldProblems.OutOfRange,
                "The process and the value's standardUncertainty must both be greater than 0 and within a factor of 1000 of each other.", process.StandardDeviation.Value.Text);
        }

        return new(
            Points.Si(process.Mean, sent.Dimension, "/process/mean", complaints),
            deviation,
            Points.Maybe(process.AcceptLow, sent.Dimension, "/process/acceptLow", complaints)?.InSi,
            Points.Maybe(process.AcceptHigh, sent.Dimension, "/process/acceptHigh", complaints)?.InSi);
    }
}

/// <summary>A process in SI.</summary>
/// <param name="Mean">Mean of its parts.</param>
/// <param name="Deviation">Standard deviation of its parts.</param>
/// <param name="AcceptLow">Lowest reading accepted, or the low limit.</param>
/// <param name="AcceptHigh">Highest reading accepted, or the high limit.</param>
public sealed record ProcessRead(double Mean, double Deviation, double? AcceptLow, double? AcceptHigh);
