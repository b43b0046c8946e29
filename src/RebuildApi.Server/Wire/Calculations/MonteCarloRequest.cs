using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.MonteCarlo;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>Distributions carried through a sum or a named function by Monte Carlo.</summary>
/// <param name="Inputs">The inputs, independent of one another.</param>
/// <param name="Dimension">What the inputs are.</param>
/// <param name="Function">A function of the engine's library, whose arguments are the names of the inputs; a sum of coefficient times input when not said.</param>
/// <param name="Constant">What is added to the sum.</param>
/// <param name="Low">A window: the chance of lying in it is given.</param>
/// <param name="High">Its upper end.</param>
/// <param name="Coverage">Coverage probability of the intervals.</param>
/// <param name="Digits">Significant digits of the uncertainty that must be sound.</param>
/// <param name="MostTrials">Where to stop when they do not come.</param>
/// <param name="Seed">The same seed gives the same answer.</param>
public sealed record MonteCarloRequest(
    [Entries(1, 20)] ImmutableArray<DistributionRequest> Inputs,
    Dimension Dimension = Dimension.Length,
    [OneOf("flank-angle-from-two-depths", "cone-half-angle-from-two-diameters", "ratio")] string? Function = null,
    SentQuantity? Constant = null,
    SentQuantity? Low = null,
    SentQuantity? High = null,
    [Between(0.5, 0.999)] decimal Coverage = 0.95m,
    [Between(1, 3)] int Digits = 2,
    [Between(65536, 1048576)] int MostTrials = 1 << 20,
    [Between(0, 2147483647)] int Seed = 1);

/// <summary>One input.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Kind">Its distribution.</param>
/// <param name="Mean">Mean, of normal and student.</param>
/// <param name="StandardUncertainty">Standard deviation of normal; scale s/√n of student.</param>
/// <param name="DegreesOfFreedom">Of student.</param>
/// <param name="Low">Lower end, of the others.</param>
/// <param name="High">Upper end, of the others.</param>
/// <param name="EndHalfWidth">Half-width of what is not known of the ends, of a trapezoid.</param>
/// <param name="Coefficient">Its coefficient in a sum.</param>
public sealed record DistributionRequest(
    [Words(100)] string Name,
    [OneOf("normal", "student", "rectangular", "triangular", "arcsine", "trapezoid")] string Kind,
    SentQuantity? Mean = null,
    SentQuantity? StandardUncertainty = null,
    [Between(1, 1e6)] decimal? DegreesOfFreedom = null,
    SentQuantity? Low = null,
    SentQuantity? High = null,
    SentQuantity? EndHalfWidth = null,
    [Between(-1e6, 1e6)] decimal Coefficient = 1m)
{
    /// <summary>To the engine, in SI; null with a complaint.</summary>
    public InputDistribution? ToEngine(Dimension dimension, string pointer, Complaints complaints)
    {
        var before = complaints.Count;
        Require(pointer, complaints);
        var mean = Point(Mean, dimension, pointer + "/mean", complaints);
        var u = Differences.Read(StandardUncertainty, dimension, pointer + "/standardUncertainty", complaints);
        var (low, high) = (Point(Low, dimension, pointer + "/low", complaints), Point(High, dimension, pointer + "/high", complaints));
        var end = Differences.Read(EndHalfWidth, dimension, pointer + "/endHalfWidth", complaints);
        if (complaints.Count == before && low > high)
            complaints.Add(pointer + "/high", FieldProblems.OutOfRange, "The upper end lies below the lower end.", High!.Value.Text);
        if (complaints.Count == before && end >= (high - low) / 2)
            complaints.Add(pointer + "/endHalfWidth", FieldProblems.OutOfRange, "The ends are known less well than half their distance.", EndHalfWidth!.Value.Text);
        return complaints.Count > before ? null : Kind switch
        {
            "normal" => new NormalInput(mean!.Value, u!.Value),
            "student" => new StudentInput(mean!.Value, u!.Value, (double)DegreesOfFreedom!.Value),
            "rectangular" => new RectangularInput(low!.Value, high!.Value),
            "triangular" => new TriangularInput(low!.Value, high!.Value),
            "arcsine" => new ArcsineInput(low!.Value, high!.Value),
            _ => new TrapezoidInput(low!.Value, high!.Value, end!.Value),
        };
    }

    /// <summary>Exactly the fields that the distribution has.</summary>
    private void Require(string pointer, Complaints complaints)
    {
        string[] needed = Kind switch
        {
            "normal" => ["mean", "standardUncertainty"],
            "student" => ["mean", "standardUncertainty", "degreesOfFreedom"],
            "trapezoid" => ["low", "high", "endHalfWidth"],
            _ => ["low", "high"],
        };
        (string Name, bool Sent)[] fields =
        [
            ("mean", Mean is not null), ("standardUncertainty", StandardUncertainty is not null), ("degreesOfFreedom", DegreesOfFreedom is not null),
            ("low", Low is not null), ("high", High is not null), ("endHalfWidth", EndHalfWidth is not null),
        ];
        foreach (var (name, sent) in fields.Where(f => f.Sent != needed.Contains(f.Name)))
        {
            var (kind, words) = sent ? (FieldProblems.Contradiction, "does not belong to") : (FieldProblems.MissingField, "is needed by");
            complaints.Add($"{pointer}/{name}", kind, $"The field {name} {words} a {Kind} distribution.");
        }
    }

    private static double? Point(SentQuantity? sent, Dimension dimension, string pointer, Complaints complaints) =>
        sent is null ? null : Quantities.Read(sent.Value, sent.Unit, dimension, pointer, complaints)?.InSi;
}
