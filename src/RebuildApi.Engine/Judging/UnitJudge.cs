using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Complaints;
using RebuildApi.Engine.Diagnosis;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Judging;

/// <summary>Answers the first three questions about a whole unit: are the parts good, do the clearances come right, may the parts run together.</summary>
public static class UnitJudge
{
    /// <summary>Judges a unit. Pure: the same view gives the same judgement for ever.</summary>
    /// <param name="view">The unit.</param>
    /// <param name="hooks">The family's rules in code.</param>
    public static Judgement Judge(UnitView view, IHooks hooks)
    {
        var family = view.Family.Family;
        var book = new EstimateBook(view);
        var parts = PartJudge.JudgeAll(book);
        var clearances = family.Loops.Select(loop => ClearanceJudge.Judge(loop, book)).ToImmutableArray();
        var pairings = family.Pairings
            .Select(rule => PairingJudge.Judge(rule, book))
            .Concat(family.Hooks.SelectMany(hook => hooks.Run(hook, view.Snapshot)))
            .ToImmutableArray();
        return new Judgement(
            view.Snapshot.Unit,
            view.Family.IdentityOf(family.Version.Id),
            view.InputsSha256,
            parts,
            clearances,
            pairings,
            ComplaintJudge.Judge(view, Standings.Of(parts.SelectMany(p => p.Verdicts).Concat(clearances.Select(c => c.Verdict)))),
            MissingList.Of(book, parts, pairings),
            BlockList.Of(view.Family, parts, clearances, pairings),
            Neighbourhoods.JudgeAll(book));
    }
}
