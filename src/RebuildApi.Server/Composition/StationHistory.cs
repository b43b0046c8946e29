using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Statistics;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.History;

namespace RebuildApi.Server.Composition;

/// <summary>The benches that readings were taken at, and how they agree on a part that all of them read.</summary>
public sealed class StationHistory(ShopHistory history)
{
    /// <summary>The benches, in the order of their ids.</summary>
    public async Task<ImmutableArray<StationWire>> All(CancellationToken cancellation)
    {
        var taken = await Measurements(cancellation);
        return
        [
            .. taken.GroupBy(m => m.Taken.Bench, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => new StationWire(
                g.Key, g.Count(), g.Min(m => m.Taken.At), g.Max(m => m.Taken.At),
                [.. g.Select(m => m.Taken.Instrument).OfType<string>().Distinct().Order(StringComparer.Ordinal)])),
        ];
    }

    /// <summary>The bias of one bench.</summary>
    /// <param name="station">The bench.</param>
    /// <param name="part">The reference part.</param>
    /// <param name="characteristic">What is read of it; a length.</param>
    /// <param name="reference">Its value, or none to count from the mean of the other benches.</param>
    /// <param name="show">In which units.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ProblemException">There is no such bench, or too little was read.</exception>
    public async Task<StationBiasWire> Bias(string station, string part, string characteristic, Length? reference, Display show, CancellationToken cancellation)
    {
        var taken = await Measurements(cancellation);
        if (taken.All(m => m.Taken.Bench != station))
            throw new ProblemException(Problems.UnknownStation, "No reading that stands was taken at a bench of this id.");
        var read = taken.Where(m => m.Component == part && m.Characteristic == characteristic && m.Readings.Any(IsLength)).ToArray();
        var own = read.Where(m => m.Taken.Bench == station).OrderBy(m => m.Taken.At).ThenBy(m => m.Id, StringComparer.Ordinal).ToArray();
        var others = read.Where(m => m.Taken.Bench != station).Select(Mean).ToArray();
        if (own.Length < 2 || (reference is null && others.Length == 0))
            throw TooLittle("At least two measurements of the part at this bench are needed, and a reference value or a reading at another bench.");
        var from = reference?.InMetres ?? others.Average();
        var errors = own.Select(m => Mean(m) - from).ToImmutableArray();
        var sigma = ControlChart.Individuals(errors).Sigma;
        if (sigma <= 0)
            throw TooLittle("All measurements of the part at this bench are alike, so that its scatter is not known.");
        var points = BiasWatch.Follow(errors, sigma);
        return new(
            station, part, characteristic, show.Metres(from), reference is null ? "mean-of-other-benches" : "sent", show.Metres(sigma), points[^1].IsAlarm,
            [.. own.Select((m, i) => BiasPointWire.From(m.Taken.At, errors[i], points[i], show))],
            "Roberts, Technometrics 1, 1959: weight 0.2, limits at three standard deviations");
    }

    private async Task<ImmutableArray<Measurement>> Measurements(CancellationToken cancellation)
    {
        var all = new Dictionary<string, Measurement>(StringComparer.Ordinal);
        await foreach (var file in history.Files(null, cancellation))
        {
            foreach (var measurement in file.Measurements)
                all[measurement.Id] = measurement;
        }

        return [.. all.Values];
    }

    private static double Mean(Measurement measurement) => measurement.Readings.Where(IsLength).Average(r => r.Low!.Value.InMetres);

    private static bool IsLength(Reading reading) => reading.IsValue && reading.Si is null;

    private static ProblemException TooLittle(string words) => new(Problems.NotComputable, words, [new FieldError("query/part", FieldProblems.BadCount.Code, words)]);
}
