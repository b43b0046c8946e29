using System.Collections.Immutable;
using RebuildApi.Engine.Judging;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.History;

/// <summary>What rests on an instrument that turned out wrong.</summary>
/// <param name="Instrument">The instrument.</param>
/// <param name="Since">The first moment that its readings are in doubt, UTC.</param>
/// <param name="Until">The last moment, UTC; absent for all that follows.</param>
/// <param name="Readings">How many measurements and trial assemblies were read with it in that time.</param>
/// <param name="Verdicts">How many answers would change without them.</param>
/// <param name="Units">The units with such readings.</param>
/// <param name="Cautions">What stands before this answer.</param>
public sealed record RecallWire(
    string Instrument, DateTimeOffset Since, DateTimeOffset? Until, int Readings, int Verdicts, ImmutableArray<RecalledUnitWire> Units, ImmutableArray<string> Cautions);

/// <summary>One unit with readings in doubt.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Tag">What is written on it.</param>
/// <param name="Stage">Where it is.</param>
/// <param name="Judged">Whether its rules are loaded; without them nothing can be said of its verdicts.</param>
/// <param name="Measurements">The measurements.</param>
/// <param name="Trials">The trial assemblies.</param>
/// <param name="Changes">The answers that do not stand without them.</param>
public sealed record RecalledUnitWire(
    string Unit,
    string Tag,
    string Stage,
    bool Judged,
    ImmutableArray<MeasurementWire> Measurements,
    ImmutableArray<TrialWire> Trials,
    ImmutableArray<RecalledVerdictWire> Changes)
{
    /// <summary>From the engine.</summary>
    public static RecalledUnitWire From(Unit unit, bool judged, Recall recall, Display show) => new(
        unit.Id,
        unit.Tag,
        unit.Stage,
        judged,
        [.. recall.Measurements.Select(m => MeasurementWire.From(m, show))],
        [.. recall.Trials.Select(t => TrialWire.From(t, show))],
        [.. recall.Changes.Select(c => new RecalledVerdictWire(c.Subject, c.With, c.Without))]);
}

/// <summary>An answer that does not stand without what an instrument read.</summary>
/// <param name="Subject">A part, a characteristic, a clearance or a pairing.</param>
/// <param name="With">Its outcome as it was.</param>
/// <param name="Without">Its outcome without them.</param>
public sealed record RecalledVerdictWire(string Subject, string With, string Without);
