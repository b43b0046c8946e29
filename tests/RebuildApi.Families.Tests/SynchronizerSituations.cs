namespace RebuildApi.Families.Tests;

/// <summary>Keys, key slots and blocker rings: facts of the trade (common practice, no source), each with a twin in which one thing differs.</summary>
public class SynchronizerSituations
{
    private static readonly Bench s_sound = Healthy.Brackenmere;

    [Fact]
    public void Keys_of_the_two_hubs_swapped_give_shifting_trouble()
    {
        var swapped = s_sound.EachReadsInches("keys-3-4", "length", 0.9100m).EachReadsInches("keys-1-2", "length", 0.7460m);

        var judgement = swapped.JudgeOverHttp();

        Assert.Equal(Compatibility.Incompatible, judgement.Pairing("key-length-3-4").Outcome);
        Assert.Equal(Compatibility.Incompatible, judgement.Pairing("key-length-1-2").Outcome);
        Assert.Equal(Outcome.Nonconforming, judgement.Characteristic("keys-3-4/length").Outcome);
    }

    [Theory]
    [InlineData("none", Compatibility.Incompatible)]
    [InlineData("one", Compatibility.Compatible)]
    public void The_notch_of_a_replacement_key_tells_which_hub_it_belongs_to(string notch, Compatibility outcome) =>
        Assert.Equal(outcome, s_sound.Shows("keys-3-4", "notch", notch).JudgeOverHttp().Pairing("key-length-3-4").Outcome);

    [Theory]
    [InlineData("opened", Compatibility.Incompatible)]
    [InlineData("sharp", Compatibility.Compatible)]
    public void Key_slots_opened_at_their_edges_let_the_ring_index_too_far(string edges, Compatibility outcome) =>
        Assert.Equal(outcome, s_sound.Shows("hub-3-4", "key-slot", edges).JudgeOverHttp().Pairing("third-ring-to-keys").Outcome);

    [Fact]
    public void Opened_key_slots_explain_a_gear_that_will_not_go_in()
    {
        var opened = s_sound.Shows("hub-3-4", "key-slot", "opened").Complains("will-not-go-in", "third");

        Assert.Contains("key-slots-opened", opened.JudgeOverHttp().Explains("will-not-go-in"));
    }

    [Theory]
    [InlineData(0.350, Compatibility.Compatible)]
    [InlineData(0.390, Compatibility.Conditional)]
    [InlineData(0.420, Compatibility.Incompatible)]
    public void The_wider_the_slot_of_a_ring_the_further_it_turns(double slot, Compatibility outcome)
    {
        var width = (decimal)slot;

        Assert.Equal(outcome, s_sound.ReadsInches("blocker-ring-3/slot-width", width, width, width).JudgeOverHttp().Pairing("third-ring-to-keys").Outcome);
    }

    [Fact]
    public void A_new_ring_that_stands_high_and_does_not_grip_is_rejected_although_its_gap_looks_generous()
    {
        var high = s_sound.ReadsInches("blocker-ring-3/reserve-gap", 0.0620m, 0.0660m, 0.0700m).Shows("blocker-ring-3", "grip", "slips");

        var judgement = high.JudgeOverHttp();

        Assert.Equal(Outcome.Conforming, judgement.Characteristic("blocker-ring-3/reserve-gap").Outcome);
        Assert.Equal(Compatibility.Incompatible, judgement.Pairing("third-ring-to-cone").Outcome);
        Assert.Contains("ring-slips", judgement.Pairing("third-ring-to-cone").Codes());
    }

    [Fact]
    public void A_ring_that_sits_lower_and_grips_at_once_is_right()
    {
        var low = s_sound.ReadsInches("blocker-ring-3/reserve-gap", 0.0380m, 0.0390m, 0.0400m);

        Assert.Equal(Compatibility.Compatible, low.JudgeOverHttp().Pairing("third-ring-to-cone").Outcome);
    }

    [Theory]
    [InlineData("extreme-pressure", Compatibility.Incompatible)]
    [InlineData("friction-modified", Compatibility.Incompatible)]
    [InlineData("mild", Compatibility.Compatible)]
    public void Yellow_metal_rings_want_a_mild_oil(string additive, Compatibility outcome) =>
        Assert.Equal(outcome, s_sound.Shows("oil", "additive", additive).JudgeOverHttp().Pairing("third-ring-oil").Outcome);

    [Fact]
    public void Hub_and_sleeve_turned_on_each_other_are_no_longer_a_set()
    {
        var turned = s_sound with
        {
            Snapshot = s_sound.Snapshot with { Placements = [.. s_sound.Snapshot.Placements.Select(p => p.Position == "sleeve-3-4" ? p with { IndexMark = "B" } : p)] },
        };

        Assert.Equal(Compatibility.Incompatible, turned.JudgeOverHttp().Pairing("hub-and-sleeve-3-4").Outcome);
    }
}
