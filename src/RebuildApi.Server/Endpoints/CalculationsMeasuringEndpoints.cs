using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.MonteCarlo;
using RebuildApi.Engine.Statistics;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Endpoints;

/// <summary>Calculations about readings and limits. Nothing is stored.</summary>
public static class CalculationsMeasuringEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapMeasuringCalculations(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("calculations");
        group.WorkOut("/calculations/uncertainty", Uncertainty, "calculateUncertainty", "Readings to a value with its uncertainty",
                "From readings with what is known of their instrument, or from the lines of a budget: combined and expanded uncertainty, effective degrees of freedom, each line's share.")
            .Fails(Problems.NotComputable)
            .Example("""
                { "readings": [{ "value": 30.601, "unit": "mm" }, { "value": 30.603, "unit": "mm" }, { "value": 30.602, "unit": "mm" }],
                  "instrument": { "resolution": { "value": 0.001, "unit": "mm" }, "limitOfError": { "value": 0.004, "unit": "mm" },
                    "referenceUncertainty": { "value": 0.0003, "unit": "mm" } } }
                """);
        group.WorkOut("/calculations/conformity", Conformity, "calculateConformity", "Hold a value against limits",
                "The outcome by the decision rule, the chance that the true value conforms, what would change it; with a process, the consumer's and producer's risks.")
            .Fails(Problems.NotComputable)
            .Example("""
                { "value": { "value": 0.0128, "unit": "in" }, "standardUncertainty": { "value": 0.0003, "unit": "in" },
                  "low": { "value": 0.010, "unit": "in" }, "high": { "value": 0.020, "unit": "in" } }
                """);
        group.WorkOut("/calculations/monte-carlo", MonteCarlo, "calculateMonteCarlo", "Carry distributions through a formula",
                "As many seeded trials as the digits asked for need: mean, standard uncertainty, symmetric and shortest interval, chance of lying in a window.")
            .Fails(Problems.NotComputable)
            .Example("""
                { "inputs": [{ "name": "shaft", "kind": "normal", "mean": { "value": 30.60, "unit": "mm" }, "standardUncertainty": { "value": 0.002, "unit": "mm" } },
                    { "name": "gear", "kind": "rectangular", "low": { "value": 30.20, "unit": "mm" }, "high": { "value": 30.24, "unit": "mm" }, "coefficient": -1 }],
                  "low": { "value": 0.25, "unit": "mm" }, "high": { "value": 0.50, "unit": "mm" } }
                """);
        group.WorkOut("/calculations/gauge-study", GaugeStudyOf, "calculateGaugeStudy", "Study a gauge",
                "A crossed study: repeatability, reproducibility, interaction, part variation, their shares, and how many sizes of part the gauge can tell apart.")
            .Fails(Problems.NotComputable)
            .Example(StudyExample);
        group.WorkOut("/calculations/control-chart", ControlChartOf, "calculateControlChart", "Make a control chart",
                "Limits from a steady time, for subgroups or single values, and the points that do not look like chance.")
            .Fails(Problems.NotComputable)
            .Example("""
                { "values": [{ "value": 0.31, "unit": "mm" }, { "value": 0.33, "unit": "mm" }, { "value": 0.30, "unit": "mm" }, { "value": 0.52, "unit": "mm" }], "steady": 3 }
                """);
    }

    private const string StudyExample = """
        { "readings": [
            { "appraiser": "Ada", "part": "1", "reading": { "value": 30.601, "unit": "mm" } }, { "appraiser": "Ada", "part": "1", "reading": { "value": 30.602, "unit": "mm" } },
            { "appraiser": "Ada", "part": "2", "reading": { "value": 30.640, "unit": "mm" } }, { "appraiser": "Ada", "part": "2", "reading": { "value": 30.642, "unit": "mm" } },
            { "appraiser": "Ben", "part": "1", "reading": { "value": 30.603, "unit": "mm" } }, { "appraiser": "Ben", "part": "1", "reading": { "value": 30.602, "unit": "mm" } },
            { "appraiser": "Ben", "part": "2", "reading": { "value": 30.641, "unit": "mm" } }, { "appraiser": "Ben", "part": "2", "reading": { "value": 30.643, "unit": "mm" } }],
          "tolerance": { "value": 0.25, "unit": "mm" } }
        """;

    private static Found<CalculationWire<UncertaintyRequest, UncertaintyWire>> Uncertainty(Body<UncertaintyRequest> body, Asked asked)
    {
        var sent = body.Value;
        var complaints = new Complaints();
        var estimate = Refusal.At("/readings", new UncertaintyIntake(sent, complaints).Read);
        complaints.ThrowIfAny(Problems.NotComputable);
        return new(Calculations.Run(sent, MeasuringFormulas.Uncertainty, () =>
        {
            var expanded = ExpandedUncertainty.Of(estimate!.StandardUncertainty, estimate.DegreesOfFreedom, (double)sent.Coverage);
            return new Worked<UncertaintyWire>(UncertaintyWire.From(estimate, expanded, sent.Dimension, asked.Show));
        }, sent.Budget is null ? "/readings" : "/budget"));
    }

    private static Found<CalculationWire<ConformityRequest, ConformityWire>> Conformity(Body<ConformityRequest> body, Asked asked)
    {
        var complaints = new Complaints();
        var read = ConformityIntake.Of(body.Value, complaints);
        complaints.ThrowIfAny(Problems.NotComputable);
        return new(Calculations.Run(body.Value, MeasuringFormulas.Conformity, () =>
        {
            var assessment = Conformance.Assess("value", read.Estimate, read.Limits(), read.Policy);
            return new Worked<ConformityWire>(ConformityWire.From(assessment, read.Risks(), body.Value.Dimension, asked.Show), assessment.Reasons);
        }, "/value"));
    }

    private static Found<CalculationWire<MonteCarloRequest, MonteCarloWire>> MonteCarlo(Body<MonteCarloRequest> body, Asked asked)
    {
        var sent = body.Value;
        var complaints = new Complaints();
        var read = MonteCarloIntake.Of(sent, complaints);
        complaints.ThrowIfAny(Problems.NotComputable);
        var options = new MonteCarloOptions((ulong)sent.Seed, (double)sent.Coverage, sent.Digits, sent.MostTrials);
        return new(Calculations.Run(sent, MeasuringFormulas.MonteCarlo, () =>
        {
            var result = MonteCarloPropagation.Run(read!.Model, read.Inputs, options);
            return new Worked<MonteCarloWire>(MonteCarloWire.From(result, read.Low, read.High, read.Result, asked.Show));
        }, "/inputs"));
    }

    private static Found<CalculationWire<GaugeStudyRequest, GaugeStudyWire>> GaugeStudyOf(Body<GaugeStudyRequest> body, Asked asked)
    {
        var sent = body.Value;
        var complaints = new Complaints();
        var readings = sent.Readings.Select((r, i) => new GaugeReading(r.Appraiser, r.Part, Points.Si(r.Reading, sent.Dimension, $"/readings/{i}/reading", complaints))).ToImmutableArray();
        var tolerance = Differences.Read(sent.Tolerance, sent.Dimension, "/tolerance", complaints);
        complaints.ThrowIfAny(Problems.NotComputable);
        var isAnova = sent.Method == "anova";
        return new(Calculations.Run(sent, isAnova ? MeasuringFormulas.GaugeByAnova : MeasuringFormulas.GaugeByRange, () =>
        {
            var result = isAnova ? GaugeStudy.ByAnova(readings, (double)sent.PoolAbove) : GaugeStudy.ByAverageAndRange(readings);
            return new Worked<GaugeStudyWire>(GaugeStudyWire.From(result, sent.Dimension, tolerance, asked.Show));
        }, "/readings"));
    }

    private static Found<CalculationWire<ControlChartRequest, ControlChartWire>> ControlChartOf(Body<ControlChartRequest> body, Asked asked)
    {
        var complaints = new Complaints();
        var read = ControlChartIntake.Of(body.Value, complaints);
        complaints.ThrowIfAny(Problems.NotComputable);
        return new(Calculations.Run(
            body.Value, MeasuringFormulas.ControlChart,
            () => new Worked<ControlChartWire>(ControlChartWire.From(read!.Chart(), read.Levels, body.Value.Dimension, asked.Show)),
            body.Value.Values is null ? "/subgroups" : "/values"));
    }
}
