using System.Text.Json;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire;

/// <summary>That a judgement was kept because someone relied on it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Purpose">What relied on it: a gate, a decision, a hand-over.</param>
/// <param name="InputsSha256">Hash of what was known.</param>
/// <param name="DeclarationSha256">Hash of the rules as declared.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Person">Who kept it.</param>
public sealed record KeptJudgementWire(string Id, string Purpose, string InputsSha256, string DeclarationSha256, DateTimeOffset Time, string Person)
{
    /// <summary>From the store.</summary>
    public static KeptJudgementWire From(JudgementKept k) => new(k.Id, k.Purpose, k.InputsSha256, k.DeclarationSha256, k.At, k.Actor);
}

/// <summary>A kept judgement with what it was made from, as it was kept.</summary>
/// <param name="Kept">When and for what.</param>
/// <param name="Snapshot">What was known.</param>
/// <param name="Judgement">What was said.</param>
public sealed record WholeKeptJudgementWire(KeptJudgementWire Kept, JsonElement Snapshot, JsonElement Judgement)
{
    /// <summary>From the store.</summary>
    public static WholeKeptJudgementWire From(Storage.Judgement j) => new(KeptJudgementWire.From(j.Kept), Parsed(j.Snapshot), Parsed(j.Body));

    private static JsonElement Parsed(ReadOnlyMemory<byte> json)
    {
        using var document = JsonDocument.Parse(json);
        return document.RootElement.Clone();
    }
}
