using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.TestKit;
using static RebuildApi.Engine.Tests.Clearances.EndPlay;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Clearances;

public class TrialTests
{
    private static readonly Limits Forward = Window(0.15m, 0.35m)!;

    [Fact]
    public void Gap_read_at_three_angles_is_averaged_and_keeps_its_spread()
    {
        var family = Family(Forward, null, Mm(3.00m));
        var snapshot = Stripped(family).With("ring-place", "ring-kind", "a").Trial("end-play", Fitted("ring-1", Mm(3.00m)), Gap(0.24m, "0"), Gap(0.25m, "120"), Gap(0.29m, "240"));

        var answer = Judge(family, snapshot);

        Assert.Equal((Mm(0.26m), Mm(0.24m), Mm(0.29m), Mm(0.05m)), (answer.Trial!.Mean, answer.Trial.Smallest, answer.Trial.Largest, answer.Trial.Spread));
        Assert.Equal(Mm(0.26m), Of(answer.FromTrial!.Value));
        Assert.Equal(EstimateBasis.Trial, answer.Verdict.Value!.Basis);
        Assert.Contains(answer.Verdict.Reasons, r => r.Code == "trial-spread");
    }

    [Fact]
    public void Gap_read_with_one_ring_says_what_another_ring_gives()
    {
        var family = Family(Forward, null, Mm(3.00m), Mm(3.10m));
        var snapshot = Stripped(family).Trial("end-play", Fitted("ring-1", Mm(3.00m)), Gap(0.35m), Gap(0.35m), Gap(0.35m));

        var answer = Judge(family, snapshot);

        Assert.Equal(Mm(3.35m), Of(answer.Combined.Value));
        Assert.Equal("ring-2", string.Join(" + ", answer.Ring!.Ranked[0].Members));
        Assert.Equal(Mm(0.25m), Of(answer.Ring.Ranked[0].Gap.Value));
    }

    [Fact]
    public void Parts_and_trial_that_agree_are_put_together_and_are_surer_than_either()
    {
        var family = Family(Forward, null, Mm(3.00m));
        var snapshot = Read(family.With("gear", k => k), 62.05m, 30.10m, 28.70m, "mic-1").Micrometer().With("ring-place", "ring-kind", "a")
            .Trial("end-play", Fitted("ring-1", Mm(3.00m)), Gap(0.24m), Gap(0.25m), Gap(0.26m));

        var answer = Judge(family, snapshot);

        Assert.Null(answer.Alarm);
        Assert.Equal(EstimateBasis.Combined, answer.Combined.Basis);
        Assert.True(answer.Combined.StandardUncertainty < Math.Min(answer.FromParts!.StandardUncertainty, answer.FromTrial!.StandardUncertainty));
    }

    [Fact]
    public void Two_digits_that_changed_places_are_found_by_the_trial()
    {
        var family = Family(Forward, null, Mm(3.00m));
        var snapshot = Read(family, 62.50m, 30.10m, 28.70m, "mic-1").Micrometer().With("ring-place", "ring-kind", "a")
            .Trial("end-play", Fitted("ring-1", Mm(3.00m)), Gap(0.24m), Gap(0.25m), Gap(0.26m));

        var answer = Judge(family, snapshot);

        Assert.Equal(Mm(-0.45m), answer.Alarm!.Residual);
        Assert.Equal(new MixUpCause(Slip.TransposedDigits, "shaft/shoulder", "62.50", "62.05", Length.Zero), answer.Alarm.Likely[0]);
        Assert.Equal(Outcome.Inconclusive, answer.Verdict.Outcome);
        Assert.Contains(answer.Verdict.Reasons, r => r.Code == "mix-up-transposed-digits");
    }

    [Fact]
    public void Ring_from_the_wrong_bin_is_found_by_the_trial()
    {
        var family = Family(Forward, null, Mm(3.00m), Mm(3.07m));
        var snapshot = Read(family, 62.05m, 30.13m, 28.71m, "mic-1").Micrometer()
            .Trial("end-play", Fitted("ring-1", Mm(3.00m)), Gap(0.14m), Gap(0.14m), Gap(0.14m));

        var answer = Judge(family, snapshot);

        Assert.Contains(answer.Alarm!.Likely, c => c is { Slip: Slip.OtherPiece, At: "ring-place", Written: "ring-1", Meant: "ring-2" });
    }

    [Fact]
    public void Trial_with_a_part_that_was_exchanged_since_is_passed_over()
    {
        var family = Family(Forward, null, Mm(3.00m));
        var snapshot = Stripped(family).With("ring-place", "ring-kind", "a").Trial("end-play", Fitted("ring-1", Mm(3.00m)), Gap(0.25m), Gap(0.25m), Gap(0.25m));
        var exchanged = snapshot.Snapshot with { Trials = [snapshot.Snapshot.Trials[0] with { Fitted = [new FittedPart("gear", "another-gear", 1)] }] };

        var answer = Judge(family, new SnapshotBuilder(exchanged));

        Assert.Null(answer.FromTrial);
        Assert.Contains(answer.Verdict.Reasons, r => r.Code == "trial-of-other-parts");
    }

    [Fact]
    public void Trial_that_does_not_name_a_part_reworked_since_is_passed_over()
    {
        var family = Family(Forward, null, Mm(3.00m));
        var snapshot = Stripped(family).With("ring-place", "ring-kind", "a").Trial("end-play", Fitted("ring-1", Mm(3.00m)), Gap(0.25m), Gap(0.25m), Gap(0.25m));
        var reworked = snapshot.Snapshot with { Components = [.. snapshot.Snapshot.Components.Select(c => c.Id == "hub" ? c with { Revision = 2 } : c)] };

        var answer = Judge(family, new SnapshotBuilder(reworked));

        Assert.Null(answer.FromTrial);
        Assert.Contains(answer.Verdict.Reasons, r => r.Code == "trial-perhaps-before-rework");
    }

    [Fact]
    public void Tight_trial_where_the_parts_say_there_is_a_gap_raises_the_alarm()
    {
        var family = Family(Forward, null, Mm(3.00m));
        var snapshot = Read(family, 62.05m, 30.10m, 28.70m, "mic-1").Micrometer().With("ring-place", "ring-kind", "a")
            .Trial("end-play", Fitted("ring-1", Mm(3.00m)), SnapshotBuilder.Tight());

        var answer = Judge(family, snapshot);

        Assert.Equal(Mm(-0.25m), answer.Alarm!.Residual);
        Assert.Equal(Outcome.Inconclusive, answer.Verdict.Outcome);
    }

    [Fact]
    public void Preload_read_without_a_stated_load_is_passed_over()
    {
        var family = Family(Forward, null, Mm(3.00m));
        family = new FamilyBuilder(family.Family with { Loops = [family.Family.Loops[0] with { Trial = TrialMethod.UnderLoad }] });
        var snapshot = Stripped(family).With("ring-place", "ring-kind", "a").Trial("end-play", Fitted("ring-1", Mm(3.00m)), Gap(-0.05m));

        var answer = Judge(family, snapshot);

        Assert.Contains(answer.Verdict.Reasons, r => r.Code == "trial-without-load");
        Assert.Equal(Outcome.NotAssessed, answer.Verdict.Outcome);
    }
}
