using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Composition;

/// <summary>Turns readings, or the lines of a budget, into an estimate.</summary>
public sealed class UncertaintyIntake(UncertaintyRequest sent, Complaints complaints)
{
    /// <summary>The estimate; null with complaints.</summary>
    public Estimate? Read()
    {
        if (sent.Readings is null == sent.Budget is null)
        {
            complaints.Add("", FieldProblems.Contradiction, "Exactly one of readings and budget is needed.");
            return null;
        }

        return sent.Budget is { } lines ? OfLines(lines) : OfReadings(sent.Readings!.Value);
    }

    private Estimate? OfLines(ImmutableArray<Wire.Calculations.BudgetLineRequest> lines)
    {
        var read = lines.Select((l, i) => l.ToContract(sent.Dimension, Pointer.Entry("/budget", i), complaints)).ToArray();
        if (complaints.Any)
            return null;
        var budget = Budget.Shared(read.Select(l => l!));
        return new Estimate(null, Budget.Combined(budget), Budget.EffectiveDegreesOfFreedom(budget), null, null, EstimateBasis.Measured, budget);
    }

    private Estimate? OfReadings(ImmutableArray<Wire.ReadingRequest> readings)
    {
        var read = readings.Select((r, i) => r.ToContract(sent.Dimension, Pointer.Entry("/readings", i), complaints)).ToArray();
        var instrument = Instrument();
        var study = Study();
        var taken = new Taken(instrument?.Id, null, "", "", DateTimeOffset.UnixEpoch, sent.Temperature?.Si)
        {
            InstrumentTemperature = sent.InstrumentTemperature?.Si,
            TemperatureHalfWidth = Differences.Read(sent.TemperatureHalfWidth, Dimension.Temperature, "/temperatureHalfWidth", complaints),
        };
        if (complaints.Any)
            return null;
        var measurement = new Measurement("sent", "part", 1, "value", [.. read.Select(r => r!)], taken, null);
        return ReadingsEstimate.Of(measurement, sent.Dimension, sent.Report, instrument, sent.Material?.ToContract("part"), study);
    }

    private InstrumentState? Instrument()
    {
        if (sent.Instrument is not { } gauge)
            return null;
        var step = Step(gauge.Resolution, "/instrument/resolution");
        var error = gauge.LimitOfError is { } limit ? Step(limit, "/instrument/limitOfError") : null;
        var reference = gauge.ReferenceUncertainty is { } u ? Step(u, "/instrument/referenceUncertainty") : null;
        return step is null ? null : new InstrumentState("sent", "gauge", step, error, gauge.ErrorModel, null)
        {
            ReferenceUncertainty = reference,
            ExpansionPerKelvin = gauge.Expansion?.PerKelvin,
            ExpansionHalfWidth = gauge.Expansion?.HalfWidthPerKelvin,
        };
    }

    // A step of temperature is a difference; a length stays exact.
    private Quantity? Step(SentQuantity step, string pointer) => sent.Dimension == Dimension.Temperature
        ? Differences.Read(step, sent.Dimension, pointer, complaints) is { } kelvins ? new Real(kelvins, Dimension.Temperature) : null
        : Quantities.Read(step.Value, step.Unit, sent.Dimension, pointer, complaints);

    private GaugeCapability? Study()
    {
        if (sent.Study is not { } found)
            return null;
        var repeatability = Differences.Read(found.Repeatability, sent.Dimension, "/study/repeatability", complaints);
        var reproducibility = Differences.Read(found.Reproducibility, sent.Dimension, "/study/reproducibility", complaints);
        return repeatability is { } ev && reproducibility is { } av ? new GaugeCapability("part", "value", ev, av, (double)found.DegreesOfFreedom) : null;
    }
}
