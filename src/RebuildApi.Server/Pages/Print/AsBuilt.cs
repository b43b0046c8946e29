using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>The clearances as they were read on the finished assembly: with what pieces, what the gauge showed, what that comes to, and between which limits.</summary>
public sealed class AsBuilt(Judged judged, RecordFacts facts, ImmutableArray<ClearanceWire> clearances, PageWords w)
{
    /// <summary>The table.</summary>
    /// <param name="by">With which instrument, by whom and when something was read.</param>
    public Grid Write(Func<Taken, string> by) => new(
        PaperHead.Columns(w, ("assembly.clearance", 2.2), ("record.pieces", 1.6), ("record.read", 2), ("record.value", 1.8), ("assembly.window", 1.8), ("record.by", 2.4)),
        [.. judged.File.Trials.Where(t => facts.Built is { } built && t.Taken.At >= built).Select(t => Line(t, by))], w["record.not-read-built"]);

    private Row Line(TrialAssembly t, Func<Taken, string> by)
    {
        var clearance = clearances.FirstOrDefault(c => c.Clearance == t.Loop);
        return Row.Of(
            clearance?.Name ?? t.Loop, string.Join(" + ", t.Pieces.Select(p => p.Member)), string.Join(", ", t.Gap.Select(RecordPaper.AsSent)),
            Shown.Of(clearance?.FromTrial), Shown.Of(clearance?.Verdict.Against), by(t.Taken));
    }
}
