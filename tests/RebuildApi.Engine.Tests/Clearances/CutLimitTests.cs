using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.TestKit;
using static RebuildApi.Engine.Tests.Clearances.EndPlay;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Clearances;

/// <summary>How far a hub may be faced: by the operation, by what must remain, and by its hardened layer. The gap lacks 0.30 mm to the window, 0.40 mm to the wanted value.</summary>
public class CutLimitTests
{
    [Fact]
    public void Remaining_width_holds_a_cut_back_with_the_doubt_of_the_reading()
    {
        var cut = Advice(remaining: Limits.AtLeast(Mm(28.35m), Invented));

        Assert.Equal(CutPermission.ToEnterOnly, cut.Permission);
        Assert.Equal(Mm(0.34m), cut.Largest);
        Assert.Contains(cut.Reasons, r => r.Code == "cut-limited-by-what-must-remain");
    }

    [Fact] // Common practice, no source: hardened layers of 0.030-0.040 in over a softer core; a fifth of the layer may go.
    public void Hardened_layer_of_0_9_lets_a_fifth_go()
    {
        var cut = Advice(share: 0.20, caseDepth: 0.90m);

        Assert.Equal(CutPermission.Refused, cut.Permission);
        Assert.Contains(cut.Reasons, r => r.Code == "cut-limited-by-hardened-layer");
        Assert.True(cut.Largest <= Mm(0.18m));
    }

    [Fact]
    public void Layer_of_unknown_depth_permits_nothing()
    {
        var cut = Advice(share: 0.20);

        Assert.Equal(CutPermission.NotAssessed, cut.Permission);
        Assert.Null(cut.Largest);
        Assert.Contains(cut.Reasons, r => r.Code == "cut-case-depth-unknown");
    }

    [Fact]
    public void Cut_beyond_the_part_is_refused() => Assert.Equal(CutPermission.Refused, Advice(most: 0.25m).Permission);

    [Fact]
    public void Cut_within_every_limit_is_permitted_and_counted_in_whole_steps()
    {
        var cut = Advice();

        Assert.Equal(CutPermission.Permitted, cut.Permission);
        Assert.Equal((Mm(0.30m), Mm(0.40m)), (cut.ToEnter, cut.ToTarget));
        Assert.Equal("hot chips", Assert.Single(cut.Cautions).In("en"));
    }

    [Fact]
    public void Step_of_nothing_is_refused() => Assert.Throws<ArgumentException>("effect", () => Advice(step: 0m));

    private static CutAdvice Advice(Limits? remaining = null, double? share = null, decimal? caseDepth = null, decimal most = 0.60m, decimal step = 0.01m)
    {
        var family = Family(Window(0.10m, 0.30m), null, Mm(3.00m))
            .With("hub", k => k with { Characteristics = [LengthOf("width", 1, 900), LengthOf("case-depth", 0, 9)] })
            .Operation(new Operation(
                "face-hub", Words("face the hub"), "hub",
                [new Effect(new Address("", "width"), Mm(-most), Length.Zero, Mm(step), "front", remaining, share)],
                [], 30, [Words("hot chips")], ["width"]));
        var read = Read(family, 61.60m, 30.10m, 28.70m, "mic-1").Micrometer();
        var snapshot = caseDepth is { } depth ? read.Reads("hub", "case-depth", null, depth) : read;
        return Assert.Single(Judge(family, snapshot).Ring!.Cuts);
    }
}
