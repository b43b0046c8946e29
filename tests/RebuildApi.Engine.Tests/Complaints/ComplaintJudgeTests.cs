using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Complaints;
using RebuildApi.Engine.Diagnosis;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Complaints;

/// <summary>Facts of the trade: common practice, no source.</summary>
public sealed class ComplaintJudgeTests
{
    private static readonly Family Shop = FamilyBuilder.Named()
        .Part("third-gear")
        .Attribute("third-gear", "dog.drive-flank", "sound", "leaned")
        .Family with
    {
        Symptoms = [Symptom("jumps-out-on-drive"), Symptom("jumps-out-on-overrun")],
        Causes =
        [
            new Cause(
                "leaned-drive-flanks",
                FamilyBuilder.Words("engagement teeth leaned over on the drive side"),
                0.2,
                [new SymptomLink("jumps-out-on-drive", 0.5, 0.8, 0.95)],
                [new AttributeSign("third-gear", "dog.drive-flank", ["leaned"])],
                FamilyBuilder.Invented),
        ],
    };

    [Fact]
    public void Teeth_leaned_on_the_drive_side_explain_jumping_out_under_load() =>
        Assert.Equal(["leaned-drive-flanks"], Judge("jumps-out-on-drive", "leaned").Explanations.Select(e => e.Cause.Id));

    [Fact]
    public void The_same_teeth_do_not_explain_jumping_out_on_the_overrun_and_the_answer_says_so()
    {
        var answer = Judge("jumps-out-on-overrun", "leaned");
        Assert.Empty(answer.Explanations);
        Assert.Equal("complaint-not-explained-by", Assert.Single(answer.Reasons).Code);
    }

    [Fact]
    public void Sound_teeth_explain_nothing() =>
        Assert.Equal("complaint-not-explained", Assert.Single(Judge("jumps-out-on-drive", "sound").Reasons).Code);

    // A loose mainshaft is no sign of one whose end play was set too tight; a cause that says no side takes either.
    [Theory]
    [InlineData(Standing.Below, LimitSide.Below, true)]
    [InlineData(Standing.Above, LimitSide.Below, false)]
    [InlineData(Standing.Above, LimitSide.Above, true)]
    [InlineData(Standing.Below, LimitSide.Above, false)]
    [InlineData(Standing.Beyond, LimitSide.Below, false)]
    [InlineData(Standing.Beyond, null, true)]
    [InlineData(Standing.Within, null, false)]
    public void End_play_is_a_sign_only_on_the_side_that_the_cause_names(Standing standing, LimitSide? side, bool explains)
    {
        var tight = new Cause(
            "end-play-wrong",
            FamilyBuilder.Words("mainshaft end play set wrong"),
            0.1,
            [new SymptomLink("hot", 0.5, 0.8, 0.95)],
            [new VerdictSign("mainshaft-end-play") { Side = side }],
            FamilyBuilder.Invented);
        var family = Shop with { Symptoms = [Symptom("hot")], Causes = [tight] };
        var snapshot = SnapshotBuilder.Complete(family).Snapshot with { Complaint = [new SymptomSeen("hot", null)] };
        var standings = ImmutableDictionary<string, Standing>.Empty.Add("mainshaft-end-play", standing);

        var answer = Assert.Single(ComplaintJudge.Judge(new UnitView(snapshot, new FamilyIndex(family)), standings));

        Assert.Equal(explains, answer.Explanations.Length == 1);
    }

    private static ComplaintAnswer Judge(string symptom, string flank)
    {
        var snapshot = SnapshotBuilder.Complete(Shop).Attribute("third-gear", "dog.drive-flank", flank).Snapshot with
        {
            Complaint = [new SymptomSeen(symptom, "third")],
        };
        return Assert.Single(ComplaintJudge.Judge(new UnitView(snapshot, new FamilyIndex(Shop)), ImmutableDictionary<string, Standing>.Empty));
    }

    private static Symptom Symptom(string id) => new(id, FamilyBuilder.Words(id), []);
}
