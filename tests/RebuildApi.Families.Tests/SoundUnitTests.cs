using RebuildApi.Engine.Judging;

namespace RebuildApi.Families.Tests;

public class SoundUnitTests
{
    public static TheoryData<string> Ids => Shipped.Ids;

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_unit_that_is_sound_in_everything_passes_every_rule_of_its_family(string id)
    {
        var judgement = Healthy.Of(id).Judge();

        Assert.Empty(judgement.Parts.SelectMany(p => p.Verdicts).Where(v => v.Outcome != Outcome.Conforming).Select(v => $"{v.Subject}: {v.Value}"));
        Assert.Empty(judgement.Blocks.Select(b => $"{b.Subject}: {b.Reason.Code}"));
        Assert.Empty(judgement.Missing.Select(m => $"{m.Position}: {m.What} {m.Id}"));
        Assert.All(judgement.Parts, p => Assert.Equal(Disposition.Reuse, p.Disposition));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_reading_without_which_a_part_is_not_assessed_is_asked_for(string id)
    {
        var bench = Healthy.Of(id);
        foreach (var reading in bench.Snapshot.Measurements)
        {
            var judgement = (bench with { Snapshot = bench.Snapshot with { Measurements = bench.Snapshot.Measurements.Remove(reading) } }).Judge();
            if (judgement.Parts.Any(p => p.Outcome == Outcome.NotAssessed))
                Assert.Contains(judgement.Missing, m => m.What == MissingWhat.Reading && m.Id == reading.Characteristic);
        }
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_unit_that_nobody_looked_at_passes_nothing(string id)
    {
        var bench = Healthy.Of(id);
        var unseen = bench with
        {
            Snapshot = bench.Snapshot with
            {
                Findings = [],
                Measurements = [],
                Components = [.. bench.Snapshot.Components.Select(c => c with { Origin = Origin.Unit, Attributes = ImmutableSortedDictionary<string, string>.Empty })],
            },
        };

        var judgement = unseen.Judge();

        Assert.DoesNotContain(judgement.Parts, p => p.Outcome == Outcome.Conforming);
        Assert.DoesNotContain(judgement.Clearances, c => c.Verdict.Outcome == Outcome.Conforming && !c.Terms.All(t => t.Estimate.Basis == EstimateBasis.Drawing));
    }
}
