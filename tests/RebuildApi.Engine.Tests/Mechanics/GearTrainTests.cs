using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;
using RebuildApi.TestKit;
using static RebuildApi.Engine.Tests.Mechanics.Angles;

namespace RebuildApi.Engine.Tests.Mechanics;

public sealed class GearTrainTests
{
    /// <summary>Mechanical Engineering Design (Shigley), two-stage 30:1 (from memory of the book, recomputed): 88/16 twice gives 30.25; 96/16 and 80/16 give 30.</summary>
    [Fact]
    public void Ratio_of_the_textbook()
    {
        Assert.Equal(30.25, GearTrain.Ratio((16, 88), (16, 88)), 1e-12);
        Assert.Equal(30, GearTrain.Ratio((16, 96), (16, 80)), 1e-12);
        Assert.True(GearTrain.IsConsistent(30.25, 30, 0.01));
        Assert.False(GearTrain.IsConsistent(30.25, 30, 0.008));
    }

    [Fact]
    public void Third_goes_through_the_countergear_and_multiplies_torque()
    {
        var third = GearTrain.Of(FourShafts, "third")!;
        Assert.Equal(30.0 / 20 * 25 / 27, third.Ratio, 1e-12);
        Assert.Equal(["constant", "third-mesh"], third.Path.Select(m => m.Mesh));
        Assert.Equal(-20.0 / 30, third.Path[1].SpeedIn, 1e-12);
        Assert.Equal(-1.5, third.Path[1].TorqueIn, 1e-12);
        Assert.Equal<string>(["input-gear", "countergear", "third-gear"], third.UnderLoad);
    }

    [Fact]
    public void Reverse_turns_the_output_the_other_way()
    {
        var reverse = GearTrain.Of(FourShafts, "reverse")!;
        Assert.Equal(-30.0 / 20 * 34 / 16, reverse.Ratio, 1e-12);
        Assert.Contains("idler", reverse.UnderLoad);
    }

    [Fact]
    public void In_direct_nothing_meshes_under_load_and_the_pocket_rollers_stop_turning()
    {
        var direct = GearTrain.Of(FourShafts, "fourth")!;
        Assert.Equal((1, 0), (direct.Ratio, direct.PocketSpeed));
        Assert.Empty(direct.UnderLoad);
        Assert.NotEqual(0, GearTrain.Of(FourShafts, "third")!.PocketSpeed);
    }

    [Fact]
    public void Meshes_in_any_order_make_the_same_path()
    {
        var turned = FourShafts with { Meshes = [.. FourShafts.Meshes.Reverse()] };
        Assert.Equal(GearTrain.Of(FourShafts, "reverse")!.Path.Select(m => m.Mesh), GearTrain.Of(turned, "reverse")!.Path.Select(m => m.Mesh));
    }

    [Fact]
    public void A_gap_in_the_path_has_no_ratio()
    {
        var cut = FourShafts with { Meshes = FourShafts.Meshes.RemoveAt(2) };
        Assert.Null(GearTrain.Of(cut, "reverse"));
    }

    /// <summary>f = z·n/60. Computed here.</summary>
    [Fact]
    public void Mesh_frequency_of_a_gear() => Assert.Equal(450, GearTrain.MeshFrequency(27, 1000), 1e-9);

    [Fact]
    public void Centre_distance_without_profile_shift_is_the_reference_one()
    {
        var reference = MeshGeometry.ReferenceCentreDistance(2.5e-3, 52, Degrees(25));
        Assert.Equal(2.5e-3 * 52 / 2 / Math.Cos(Degrees(25)), reference, 1e-15);
        Assert.Equal(reference, MeshGeometry.WorkingCentreDistance(2.5e-3, 52, Degrees(25), Degrees(20), 0)!.Value, 1e-12);
    }

    /// <summary>Spur 12 and 24 teeth, module 3, shifts 0.6 and 0.36: the working pressure angle 26.0886° and distance 56.4999 mm of the usual handbook example (from memory, recomputed).</summary>
    [Fact]
    public void Centre_distance_with_profile_shift() =>
        Assert.Equal(56.4999e-3, MeshGeometry.WorkingCentreDistance(3e-3, 36, 0, Degrees(20), 0.96)!.Value, 5e-8);

    [Fact]
    public void Involute_and_its_inverse_agree()
    {
        foreach (var degrees in new[] { 0.5, 5.0, 14.5, 20, 25, 45, 60 })
            Assert.Equal(Degrees(degrees), MeshGeometry.InverseInvolute(MeshGeometry.Involute(Degrees(degrees))), 1e-12);
    }

    /// <summary>Case 70 K warmer, 77.5 mm: 0.062 mm wider, backlash grows 0.045 mm at 20 degrees. Computed here, no source.</summary>
    [Fact]
    public void Backlash_grows_with_the_centres() => Assert.Equal(0.045, MeshGeometry.BacklashChange(0.062, Degrees(20)), 0.0005);

    private static Family FourShafts { get; } = Declare();

    private static Family Declare()
    {
        var built = FamilyBuilder.Named().Part("input-gear").Part("countergear").Part("third-gear").Part("first-gear").Part("idler").Part("case")
            .With("input-gear", k => Teeth(k, ("", 20)))
            .With("countergear", k => Teeth(k, ("constant", 30), ("third", 27), ("reverse", 16)))
            .With("third-gear", k => Teeth(k, ("", 25)))
            .With("first-gear", k => Teeth(k, ("", 34)))
            .With("idler", k => Teeth(k, ("", 18)));
        return built.Family with
        {
            Meshes =
            [
                Mesh("constant", "input-gear", "countergear/constant", "third", "reverse"),
                Mesh("third-mesh", "countergear/third", "third-gear", "third"),
                Mesh("reverse-in", "countergear/reverse", "idler", "reverse"),
                Mesh("reverse-out", "idler", "first-gear", "reverse"),
            ],
        };
    }

    private static GearMesh Mesh(string id, string driver, string driven, params string[] gears) =>
        new(id, driver, driven, new Address("case", "centre-distance"), [.. gears]);

    private static PartKind Teeth(PartKind kind, params (string Id, int Teeth)[] rows) => kind with
    {
        ToothSets = [.. rows.Select(r => new ToothSet(r.Id, r.Teeth, Length.Millimetres(2.5m), 0.4, Hand.Left, 0.35, 0, FamilyBuilder.Invented))],
    };
}
