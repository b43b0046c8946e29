namespace RebuildApi.Storage;

/// <summary>That a judgement was kept, and for what.</summary>
/// <param name="Id">Its id; sorts by time.</param>
/// <param name="Unit">The unit that was judged.</param>
/// <param name="Purpose">What relied on it: <c>latest</c>, <c>gate</c>, <c>decision</c>, <c>quote</c>, <c>approval</c>, <c>fitting</c>, <c>hand-over</c>, <c>edition-move</c>.</param>
/// <param name="InputsSha256">Canonical hash of the snapshot.</param>
/// <param name="DeclarationSha256">Canonical hash of the family's declaration.</param>
/// <param name="SnapshotSha256">SHA-256 of the snapshot's bytes as kept.</param>
/// <param name="BodySha256">SHA-256 of the judgement's bytes as kept.</param>
/// <param name="At">When it was kept, UTC.</param>
/// <param name="Actor">Who kept it.</param>
public sealed record JudgementKept(
    string Id,
    string Unit,
    string Purpose,
    string InputsSha256,
    string DeclarationSha256,
    string SnapshotSha256,
    string BodySha256,
    DateTimeOffset At,
    string Actor);

/// <summary>A kept judgement with the snapshot it was made from, so that it can be made again and compared.</summary>
/// <param name="Kept">When and for what.</param>
/// <param name="Snapshot">The snapshot as JSON, byte for byte as it was kept.</param>
/// <param name="Body">The judgement as JSON, byte for byte as it was kept.</param>
public sealed record Judgement(JudgementKept Kept, ReadOnlyMemory<byte> Snapshot, ReadOnlyMemory<byte> Body);
