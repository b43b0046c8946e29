using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Clearances;

/// <summary>An invented gear on an invented shaft: shoulder distance - gear - hub - ring = end play.</summary>
internal static class EndPlay
{
    public static readonly Limits InchWindow = Limits.Between(Length.Inches(0.010m), Length.Inches(0.020m), Invented, Length.Inches(0.015m));

    public static readonly Term Ring = Piece("ring", "ring-place");

    public static FamilyBuilder Family(Limits? window = null, Length? tolerance = null, params Length[] rings) => Named()
        .Part("shaft", LengthOf("shoulder", 1, 900))
        .Part("gear", LengthOf("length", 1, 900))
        .Part("hub", LengthOf("width", 1, 900))
        .Kind(new PartKind("ring-kind", Words("ring"), [LengthOf("thickness", 0, 9)], [], [], [], null, true))
        .Position("ring-place", "ring-kind")
        .Series("ring", "ring-kind", tolerance ?? Length.Zero, rings.Length == 0 ? [Length.Inches(0.087m), Length.Inches(0.090m), Length.Inches(0.093m)] : rings)
        .Loop("end-play", window ?? InchWindow, Opens("shaft", "shoulder"), Closes("gear", "length"), Closes("hub", "width"), Ring);

    /// <summary>Found parts everywhere but at the place of the ring.</summary>
    public static SnapshotBuilder Stripped(FamilyBuilder family) => SnapshotBuilder.Of(family.Family).Found("shaft", "shaft").Found("gear", "gear").Found("hub", "hub");

    /// <summary>Stripped and read: shoulder, gear, hub in millimetres.</summary>
    public static SnapshotBuilder Read(FamilyBuilder family, decimal shoulder, decimal gear, decimal hub, string? instrument = null) => Stripped(family)
        .Reads("shaft", "shoulder", instrument, shoulder)
        .Reads("gear", "length", instrument, gear)
        .Reads("hub", "width", instrument, hub);

    public static ClearanceAnswer Judge(FamilyBuilder family, SnapshotBuilder snapshot, string loop = "end-play")
    {
        var book = new EstimateBook(new UnitView(snapshot.Snapshot, new FamilyIndex(family.Family)));
        return ClearanceJudge.Judge(book.View.Family.Loops[loop], book);
    }

    public static ImmutableArray<FittedPiece> Fitted(string member, Length thickness) => [new("ring-place", "ring", member, thickness)];

    public static Reading Gap(decimal millimetres, string? at = null) => SnapshotBuilder.Millimetres(millimetres) with { At = at };

    public static Length Mm(decimal value) => Length.Millimetres(value);

    public static Length Of(Quantity? quantity) => Assert.IsType<Exact>(quantity).Value;
}
