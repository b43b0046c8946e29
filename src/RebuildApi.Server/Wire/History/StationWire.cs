using System.Collections.Immutable;
using RebuildApi.Engine.Statistics;

namespace RebuildApi.Server.Wire.History;

/// <summary>A bench that readings were taken at.</summary>
/// <param name="Id">Its id, as the readings name it.</param>
/// <param name="Measurements">How many measurements that stand were taken there.</param>
/// <param name="First">When the first was taken, UTC.</param>
/// <param name="Last">When the last was taken, UTC.</param>
/// <param name="Instruments">The instruments that were used there.</param>
public sealed record StationWire(string Id, int Measurements, DateTimeOffset First, DateTimeOffset Last, ImmutableArray<string> Instruments);

/// <summary>The bias of a bench by readings of a shared reference part, followed in the order of time.</summary>
/// <param name="Station">The bench.</param>
/// <param name="Part">The reference part.</param>
/// <param name="Characteristic">What was read of it.</param>
/// <param name="Reference">The value that its errors are counted from.</param>
/// <param name="ReferenceIs">Where that comes from: <c>sent</c>, or <c>mean-of-other-benches</c>.</param>
/// <param name="Sigma">Standard deviation of one reading, from the moving ranges of this bench's own readings.</param>
/// <param name="Alarm">Whether the last point is farther from 0 than chance alone would carry it.</param>
/// <param name="Points">The readings with their weighted average.</param>
/// <param name="Source">Where the method comes from.</param>
public sealed record StationBiasWire(
    string Station,
    string Part,
    string Characteristic,
    QuantityWire Reference,
    string ReferenceIs,
    QuantityWire Sigma,
    bool Alarm,
    ImmutableArray<BiasPointWire> Points,
    string Source);

/// <summary>One reading of the reference part.</summary>
/// <param name="At">When, UTC.</param>
/// <param name="Error">Reading minus reference.</param>
/// <param name="Average">Exponentially weighted average of the errors.</param>
/// <param name="Limit">How far from 0 chance alone would carry it.</param>
/// <param name="Alarm">Whether it is farther.</param>
public sealed record BiasPointWire(DateTimeOffset At, QuantityWire Error, QuantityWire Average, QuantityWire Limit, bool Alarm)
{
    /// <summary>From the engine; lengths in metres.</summary>
    public static BiasPointWire From(DateTimeOffset at, double error, BiasPoint point, Display show) =>
        new(at, show.Metres(error), show.Metres(point.Average), show.Metres(point.Limit), point.IsAlarm);
}
