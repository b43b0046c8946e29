using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.History;

/// <summary>What rests on an instrument that turned out wrong.</summary>
/// <param name="Instrument">The instrument.</param>
/// <param name="Since">The first moment that its readings are in doubt, UTC.</param>
/// <param name="Readings">How many measurements it took since then.</param>
/// <param name="Verdicts">How many verdicts would change without them.</param>
/// <param name="Units">The units with such readings.</param>
/// <param name="Cautions">What stands before this answer.</param>
public sealed record RecallWire(string Instrument, DateTimeOffset Since, int Readings, int Verdicts, ImmutableArray<RecalledUnitWire> Units, ImmutableArray<string> Cautions);

/// <summary>One unit with readings in doubt.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Tag">What is written on it.</param>
/// <param name="Stage">Where it is.</param>
/// <param name="Judged">Whether its rules are loaded; without them nothing can be said of its verdicts.</param>
/// <param name="Measurements">The measurements.</param>
/// <param name="Changes">The verdicts that do not stand without them.</param>
public sealed record RecalledUnitWire(
    string Unit, string Tag, string Stage, bool Judged, ImmutableArray<MeasurementWire> Measurements, ImmutableArray<RecalledVerdictWire> Changes)
{
    /// <summary>From the engine.</summary>
    public static RecalledUnitWire From(Unit unit, ImmutableArray<Measurement> measurements, Recall? recall, Display show) => new(
        unit.Id,
        unit.Tag,
        unit.Stage,
        recall is not null,
        [.. measurements.Select(m => MeasurementWire.From(m, show))],
        [.. (recall?.Changes ?? []).Select(c => new RecalledVerdictWire(c.With.Subject, c.With.Outcome, c.Without.Outcome))]);
}

/// <summary>A verdict that does not stand without an instrument's readings.</summary>
/// <param name="Subject">What it is about.</param>
/// <param name="With">Its outcome as it was.</param>
/// <param name="Without">Its outcome without them.</param>
public sealed record RecalledVerdictWire(string Subject, Outcome With, Outcome Without);
