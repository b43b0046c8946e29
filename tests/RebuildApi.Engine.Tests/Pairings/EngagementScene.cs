using RebuildApi.Contracts;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Pairings;

/// <summary>A third gear and its sleeve, with the rule that holds them together.</summary>
internal static class EngagementScene
{
    public static readonly Family Family = FamilyBuilder.Named()
        .Part("third-gear", Bench.AngleOf("dog.drive-flank-angle"))
        .Attribute("third-gear", "dog.form", "straight", "back-tapered")
        .Attribute("third-gear", "dog.drive-flank", "sound", "dark", "worn", "leaned", "rounded", "short", "spent")
        .Attribute("third-gear", "dog.coast-flank", "sound", "dark", "worn", "leaned", "rounded", "short", "spent")
        .Attribute("third-gear", "dog.stop", "present", "limited", "none")
        .Part("sleeve-3-4", Bench.AngleOf("drive-flank-angle"))
        .Attribute("sleeve-3-4", "form", "straight", "back-tapered")
        .Family;

    public static PairingRule Rule { get; } = Bench.Rule("engagement-form", ("gear", "third-gear/dog"), ("sleeve", "sleeve-3-4"));

    public static SnapshotBuilder Of(string? form, string? drive, string? coast, string? sleeve, string? stop, double gearDegrees = 3.5, double sleeveDegrees = 3.5)
    {
        var builder = SnapshotBuilder.Complete(Family)
            .ReadsAngle("third-gear", "dog.drive-flank-angle", gearDegrees)
            .ReadsAngle("sleeve-3-4", "drive-flank-angle", sleeveDegrees);
        (string Component, string Attribute, string? Value)[] seen =
        [
            ("third-gear", "dog.form", form), ("third-gear", "dog.drive-flank", drive), ("third-gear", "dog.coast-flank", coast),
            ("sleeve-3-4", "form", sleeve), ("third-gear", "dog.stop", stop),
        ];
        return seen.Where(s => s.Value is not null).Aggregate(builder, (b, s) => b.Attribute(s.Component, s.Attribute, s.Value!));
    }
}
