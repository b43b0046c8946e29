using System.Collections.Immutable;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>What a hand-over record tells besides the judgement: the way of the gearbox, who signed for what, and what was kept.</summary>
/// <param name="Passings">Every step, oldest first.</param>
/// <param name="SignOffs">What was signed for, oldest first.</param>
/// <param name="Kept">The judgement that was kept at hand-over, or else at its last gate; none before any.</param>
/// <param name="Attachments">Photos and documents.</param>
public sealed record RecordFacts(ImmutableArray<StagePassing> Passings, ImmutableArray<SignOff> SignOffs, JudgementKept? Kept, ImmutableArray<Attachment> Attachments)
{
    /// <summary>As it is stored.</summary>
    public static async Task<RecordFacts> Of(IStore store, string unit, CancellationToken cancellation)
    {
        var of = new ShopFilter(unit);
        var kept = await store.LatestJudgement(unit, "hand-over", cancellation) ?? await store.LatestJudgement(unit, "gate", cancellation);
        return new(await store.All<StagePassing>(of, cancellation), await store.All<SignOff>(of, cancellation), kept?.Kept, await store.All<Attachment>(of, cancellation));
    }

    /// <summary>From when on what was read was read on the assembly; null while it has not gone together.</summary>
    public DateTimeOffset? Built => Passings.LastOrDefault(p => p.To == UnitStages.Assembly || UnitStages.IsBefore(p.To, UnitStages.Assembly)) is { To: UnitStages.Assembly } built ? built.Time : null;
}
