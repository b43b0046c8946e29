using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.MonteCarlo;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Composition;

/// <summary>What a propagation was asked, read.</summary>
/// <param name="Model">The formula.</param>
/// <param name="Inputs">Its inputs, in the order it takes them.</param>
/// <param name="Result">What the result is.</param>
/// <param name="Low">Lower end of the window in SI, if sent.</param>
/// <param name="High">Upper end of the window in SI, if sent.</param>
public sealed record MonteCarloIntake(Model Model, ImmutableArray<InputDistribution> Inputs, Dimension Result, double? Low, double? High)
{
    /// <summary>Reads it; null with complaints.</summary>
    public static MonteCarloIntake? Of(MonteCarloRequest sent, Complaints complaints)
    {
        var inputs = sent.Inputs.Select((x, i) => x.ToEngine(sent.Dimension, Pointer.Entry("/inputs", i), complaints)).ToArray();
        var function = sent.Function is { } name ? NamedFunctions.Find(name) : null;
        var result = function is null ? sent.Dimension : function.Name == "ratio" ? Dimension.Ratio : Dimension.Angle;
        var order = function is null ? [.. Enumerable.Range(0, inputs.Length)] : Order(function, sent.Inputs, complaints);
        var constant = Points.Maybe(sent.Constant, sent.Dimension, "/constant", complaints)?.InSi ?? 0;
        if (function is not null && sent.Constant is not null)
            complaints.Add("/constant", FieldProblems.Contradiction, "A constant belongs to a sum, not to a function.");
        var low = Points.Maybe(sent.Low, result, "/low", complaints)?.InSi;
        var high = Points.Maybe(sent.High, result, "/high", complaints)?.InSi;
        if (complaints.Any)
            return null;
        var model = function is null ? Models.Linear(constant, [.. sent.Inputs.Select(x => (double)x.Coefficient)]) : Models.Of(function.Value);
        return new(model, [.. order.Select(i => inputs[i]!)], result, low, high);
    }

    private static int[] Order(NamedFunction function, ImmutableArray<DistributionRequest> inputs, Complaints complaints)
    {
        var names = inputs.Select(x => x.Name).ToArray();
        if (names.Length != function.Arguments.Count || function.Arguments.Any(a => !names.Contains(a, StringComparer.Ordinal)))
            complaints.Add("/inputs", FieldProblems.Contradiction, $"The function {function.Name} takes exactly the inputs: {string.Join(", ", function.Arguments)}.");
        return [.. function.Arguments.Select(a => Array.IndexOf(names, a))];
    }
}
