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
        var stations = new SortedDictionary<string, StationWire>(StringComparer.Ordinal);
        await foreach (var m in history.Measurements(null, cancellation))
        {
            var now = stations.GetValueOrDefault(m.Taken.Bench) ?? new StationWire(m.Taken.Bench, 0, m.Taken.At, m.Taken.At, []);
            stations[m.Taken.Bench] = now with
            {
                Measurements = now.Measurements + 1,
                First = m.Taken.At < now.First ? m.Taken.At : now.First,
                Last = m.Taken.At > now.Last ? m.Taken.At : now.Last,
                Instruments = m.Taken.Instrument is { } used && !now.Instruments.Contains(used) ? [.. now.Instruments.Add(used).Order(StringComparer.Ordinal)] : now.Instruments,
            };
        }

        return [.. stations.Values];
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
        var all = new List<Measurement>();
        await foreach (var measurement in history.Measurements(part, cancellation))
            all.Add(measurement);
        if (all.All(m => m.Taken.Bench != station) && !await IsKnown(station, cancellation))
            throw new ProblemException(Problems.UnknownStation, "No reading that stands was taken at a bench of this id.");
        var read = all.Where(m => m.Characteristic == characteristic && m.Readings.Any(IsLength)).ToArray();
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

    private async Task<bool> IsKnown(string station, CancellationToken cancellation)
    {
        await foreach (var measurement in history.Measurements(null, cancellation))
        {
            if (measurement.Taken.Bench == station)
                return true;
        }

        return false;
    }

    private static double Mean(Measurement measurement) => measurement.Readings.Where(IsLength).Average(r => r.Low!.Value.InMetres);

    private static bool IsLength(Reading reading) => reading.IsValue && reading.Si is null;

    private static ProblemException TooLittle(string words) => new(Problems.NotComputable, words, [new FieldError("query/part", FieldProblems.BadCount.Code, words)]);
}
