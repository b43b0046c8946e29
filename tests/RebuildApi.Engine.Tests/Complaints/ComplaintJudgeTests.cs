using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Complaints;
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

    private static ComplaintAnswer Judge(string symptom, string flank)
    {
        var snapshot = SnapshotBuilder.Complete(Shop).Attribute("third-gear", "dog.drive-flank", flank).Snapshot with
        {
            Complaint = [new SymptomSeen(symptom, "third")],
        };
        return Assert.Single(ComplaintJudge.Judge(new UnitView(snapshot, new FamilyIndex(Shop)), ImmutableHashSet<string>.Empty));
    }

    private static Symptom Symptom(string id) => new(id, FamilyBuilder.Words(id), []);
}
