using System.Text.Json;
using RebuildApi.Contracts;
using RebuildApi.Server.Json;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>Keeps a judgement that someone relies on, with the snapshot it was made from.</summary>
public static class KeptJudgement
{
    private const string InItsRecord = "(in the record of the decision)";

    /// <summary>Keeps it inside a change.</summary>
    /// <returns>Its id.</returns>
    public static string Keep(this IWriteSession session, Judged judged, string purpose) => session.KeepJudgement(
        judged.File.Unit.Id, judged.View.InputsSha256, judged.Family.DeclarationSha256, purpose, SnapshotOf(judged), JudgementOf(judged));

    /// <summary>Ends a change that was judged on what is no longer there.</summary>
    /// <exception cref="VersionConflictException">Someone wrote between judging and changing: judge again.</exception>
    public static void RequireStill(this Judged judged, UnitFile file)
    {
        if (file.Unit.Version != judged.File.Unit.Version)
            throw new VersionConflictException("unit", file.Unit.Id, judged.File.Unit.Version, file.Unit.Version);
    }

    // What is kept is hashed and never changed; a reason in somebody's own words stands in the decision's record, from which it can be erased.
    private static UnitFile WithoutReasons(UnitFile file) => file with { Decisions = [.. file.Decisions.Select(d => d with { Reason = InItsRecord })] };

    private static byte[] SnapshotOf(Judged judged) => JsonSerializer.SerializeToUtf8Bytes(judged.View.Snapshot, ContractJson.Default.UnitSnapshot);

    private static byte[] JudgementOf(Judged judged)
    {
        var sheet = new AnswerSheet(judged with { File = WithoutReasons(judged.File) }, Display.For("mm"));
        return JsonSerializer.SerializeToUtf8Bytes(new JudgementWire(sheet.Parts, sheet.Clearances, sheet.Pairings), WireJson.Options);
    }
}
