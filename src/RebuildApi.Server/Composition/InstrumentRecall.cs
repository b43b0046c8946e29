using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;
using RebuildApi.PluginHost;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.History;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>What rests on an instrument, over all units that show something it read; one unit at a time is held in memory.</summary>
public sealed class InstrumentRecall(IStore store, ShopHistory history, IPluginCatalog catalog)
{
    /// <summary>The recall.</summary>
    /// <param name="instrument">The instrument.</param>
    /// <param name="since">The first moment in doubt; none to go by the calibrations.</param>
    /// <param name="until">The last moment in doubt; none for all that follows, or to go by the calibrations.</param>
    /// <param name="show">In which units.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ProblemException">There is no such instrument, or no moment was sent and no calibration found it wrong.</exception>
    public async Task<RecallWire> Of(string instrument, DateTimeOffset? since, DateTimeOffset? until, Display show, CancellationToken cancellation)
    {
        var known = await store.Instrument(instrument, cancellation)
            ?? throw new ProblemException(Problems.UnknownInstrumentId, "No instrument of this id is registered.");
        var (from, to) = since is { } said ? (said, until) : ByCalibration(known.State, until);
        var units = ImmutableArray.CreateBuilder<RecalledUnitWire>();
        foreach (var unit in await store.UnitsReadWith(instrument, cancellation))
        {
            if (await store.File(unit, cancellation) is { } file && InUnit(file, instrument, from, to, show) is { } recalled)
                units.Add(recalled);
        }

        var readings = units.SelectMany(u => u.Measurements.Select(m => "m" + m.Id).Concat(u.Trials.Select(t => "t" + t.Id))).Distinct().Count();
        return new RecallWire(instrument, from, to, readings, units.Sum(u => u.Changes.Length), units.ToImmutable(), Cautions.Standing);
    }

    private RecalledUnitWire? InUnit(UnitFile file, string instrument, DateTimeOffset since, DateTimeOffset? until, Display show)
    {
        var view = history.ViewOf(file);
        var recall = view is null ? Unjudged(file, instrument, since, until) : Recall.Of(view, instrument, since, until, Judge);
        return recall.Measurements.IsEmpty && recall.Trials.IsEmpty ? null : RecalledUnitWire.From(file.Unit, view is not null, recall, show);
    }

    private Engine.Judging.Judgement Judge(UnitView view) => UnitJudge.Judge(view, new CatalogHooks(catalog, view.Family));

    private static Recall Unjudged(UnitFile file, string instrument, DateTimeOffset since, DateTimeOffset? until)
    {
        return new Recall([.. file.Measurements.Where(m => IsDoubtful(m.Taken))], [.. file.Trials.Where(t => IsDoubtful(t.Taken))], []);

        bool IsDoubtful(Taken taken) => taken.Instrument == instrument && taken.At >= since && !(taken.At > until);
    }

    private static (DateTimeOffset Since, DateTimeOffset? Until) ByCalibration(InstrumentState state, DateTimeOffset? until)
    {
        if (state.InDoubt is not { Count: > 0 } times)
        {
            const string words = "No calibration found this instrument wrong: say since when its readings are in doubt.";
            throw new ProblemException(Problems.NotComputable, words, [new FieldError("query/since", FieldProblems.MissingField.Code, words, null, ["2026-03-02"])]);
        }

        return (times[^1].After ?? DateTimeOffset.UnixEpoch, until ?? times[^1].UpTo);
    }
}
