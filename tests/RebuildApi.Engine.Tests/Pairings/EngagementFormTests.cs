using CsCheck;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using static RebuildApi.Contracts.Compatibility;

namespace RebuildApi.Engine.Tests.Pairings;

/// <summary>The engagement table, cell by cell (common practice, no source).</summary>
public sealed class EngagementFormTests
{
    private static readonly string[] s_flanks = ["sound", "dark", "worn", "leaned", "rounded", "short", "spent"];

    [Theory]
    [InlineData("straight", "sound", "straight", "none", Compatible)]
    [InlineData("straight", "sound", "back-tapered", "present", Conditional)]
    [InlineData("straight", "sound", "back-tapered", "limited", Conditional)]
    [InlineData("straight", "sound", "back-tapered", "none", Incompatible)]
    [InlineData("back-tapered", "sound", "straight", "none", Incompatible)]
    [InlineData("back-tapered", "sound", "straight", "present", Incompatible)]
    [InlineData("back-tapered", "sound", "back-tapered", "present", Compatible)]
    [InlineData("back-tapered", "sound", "back-tapered", "limited", Compatible)]
    [InlineData("back-tapered", "sound", "back-tapered", "none", Compatible)]
    [InlineData("straight", "leaned", "straight", "none", Incompatible)]
    [InlineData("straight", "leaned", "back-tapered", "present", Conditional)]
    [InlineData("straight", "leaned", "back-tapered", "none", Incompatible)]
    [InlineData("back-tapered", "rounded", "back-tapered", "present", Incompatible)]
    [InlineData("straight", "short", "straight", "none", Incompatible)]
    [InlineData("straight", "spent", "back-tapered", "present", Incompatible)]
    public void Each_cell_of_the_table_comes_out_as_the_trade_has_it(string form, string drive, string sleeve, string stop, Compatibility expected) =>
        Assert.Equal(expected, EngagementScene.Rule.Judge(EngagementScene.Family, EngagementScene.Of(form, drive, "sound", sleeve, stop)).Outcome);

    [Fact]
    public void Leaned_teeth_without_a_stop_may_run_only_where_the_family_says_so() =>
        Assert.Equal(Conditional, EngagementScene.Rule.With("leaned-without-stop", "conditional")
            .Judge(EngagementScene.Family, EngagementScene.Of("straight", "leaned", "dark", "back-tapered", "none")).Outcome);

    [Theory]
    [InlineData(3.5, 4.45, Compatible)]
    [InlineData(3.5, 4.55, Incompatible)]
    public void Two_back_tapers_agree_within_one_degree(double gear, double sleeve, Compatibility expected) =>
        Assert.Equal(expected, EngagementScene.Rule.Judge(
            EngagementScene.Family, EngagementScene.Of("back-tapered", "sound", "sound", "back-tapered", "present", gear, sleeve)).Outcome);

    [Fact]
    public void Wear_on_the_drive_flank_only_with_dark_untouched_coast_flanks_means_that_the_teeth_have_leaned()
    {
        var verdict = EngagementScene.Rule.Judge(EngagementScene.Family, EngagementScene.Of("straight", "worn", "dark", "straight", "none"));

        Assert.Equal(Incompatible, verdict.Outcome);
        Assert.Equal(["engagement-leaned-pushed-out", "engagement-leaned-on-drive-only"], verdict.Codes());
    }

    [Fact]
    public void Wear_on_both_flanks_alike_is_no_lean() =>
        Assert.Equal(Compatible, EngagementScene.Rule.Judge(EngagementScene.Family, EngagementScene.Of("straight", "worn", "worn", "straight", "none")).Outcome);

    [Fact]
    public void An_unknown_stop_is_asked_for_when_it_decides_and_not_when_it_does_not()
    {
        var asked = EngagementScene.Rule.Judge(EngagementScene.Family, EngagementScene.Of("straight", "sound", "sound", "back-tapered", null));
        var notAsked = EngagementScene.Rule.Judge(EngagementScene.Family, EngagementScene.Of("straight", "sound", "sound", "straight", null));

        Assert.Equal(NotAssessed, asked.Outcome);
        Assert.Equal(new Address("third-gear", "dog.stop"), Assert.Single(asked.Settles));
        Assert.Equal(Compatible, notAsked.Outcome);
    }

    [Fact]
    public void Spent_teeth_are_rejected_whatever_else_is_unknown() =>
        Assert.Equal(Incompatible, EngagementScene.Rule.Judge(EngagementScene.Family, EngagementScene.Of(null, "rounded", null, null, null)).Outcome);

    [Fact]
    public void Every_sufficient_cure_applied_and_judged_again_gives_compatible() => Scenes.Sample(scene =>
    {
        var verdict = EngagementScene.Rule.Judge(EngagementScene.Family, scene.Snapshot);
        return verdict.Cures.Where(c => c.Sufficient).All(c =>
            PairingJudge.Outcome(EngagementScene.Rule, Bench.Book(EngagementScene.Family, ProvenCures.Apply(c, scene.Snapshot.Snapshot, Bench.Index(EngagementScene.Family)))) == Compatible);
    }, iter: 200);

    [Fact]
    public void Whatever_is_wrong_some_exchange_cures_it() => Scenes.Sample(scene =>
    {
        var verdict = EngagementScene.Rule.Judge(EngagementScene.Family, scene.Snapshot);
        return verdict.Outcome is Compatible or NotAssessed || verdict.Cures.Any(c => c.Sufficient);
    }, iter: 200);

    [Fact]
    public void Taking_a_sight_away_never_makes_it_better() => Scenes.Sample(scene =>
    {
        var before = EngagementScene.Rule.Outcome(EngagementScene.Family, scene.Snapshot);
        return scene.Lesser.All(lesser =>
        {
            var after = EngagementScene.Rule.Outcome(EngagementScene.Family, lesser);
            return after is NotAssessed or Incompatible || after == before;
        });
    }, iter: 200);

    private static Gen<Scene> Scenes { get; } =
        from form in Any("straight", "back-tapered", null)
        from drive in Any([.. s_flanks, null])
        from coast in Any([.. s_flanks, null])
        from sleeve in Any("straight", "back-tapered", null)
        from stop in Any("present", "limited", "none", null)
        from angle in Gen.Double[2, 6]
        select new Scene(form, drive, coast, sleeve, stop, angle);

    private static Gen<string?> Any(params string?[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private sealed record Scene(string? Form, string? Drive, string? Coast, string? Sleeve, string? Stop, double Angle)
    {
        public TestKit.SnapshotBuilder Snapshot => EngagementScene.Of(Form, Drive, Coast, Sleeve, Stop, Angle);

        public IEnumerable<TestKit.SnapshotBuilder> Lesser =>
        [
            (this with { Form = null }).Snapshot, (this with { Drive = null }).Snapshot, (this with { Coast = null }).Snapshot,
            (this with { Sleeve = null }).Snapshot, (this with { Stop = null }).Snapshot,
        ];
    }
}
