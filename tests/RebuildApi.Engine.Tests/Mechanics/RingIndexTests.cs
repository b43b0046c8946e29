using CsCheck;
using RebuildApi.Engine.Mechanics;

namespace RebuildApi.Engine.Tests.Mechanics;

public sealed class RingIndexTests
{
    /// <summary>36 teeth, keys at 33 mm; 2.88 mm of play is a quarter of a pitch. Bands common practice, no source; shares computed here.</summary>
    [Theory]
    [InlineData(1.90, IndexBand.SlipsBy)]
    [InlineData(2.10, IndexBand.Watched)]
    [InlineData(2.88, IndexBand.Right)]
    [InlineData(3.38, IndexBand.Right)]
    [InlineData(3.88, IndexBand.Watched)]
    [InlineData(4.70, IndexBand.OverIndexed)]
    public void Opened_key_slots_go_from_right_to_block_out(double slotMinusKeyMm, IndexBand band) =>
        Assert.Equal(band, RingIndex.Solve(new RingIndexInput(36, slotMinusKeyMm * 1e-3, 0.033)).Band);

    [Fact]
    public void Play_of_the_keys_in_the_hub_adds_to_the_index_angle() => Gen.Select(Gen.Double[0, 4e-3], Gen.Double[0, 2e-3], Gen.Int[24, 72]).Sample((ring, hub, teeth) =>
        Math.Abs(Share(ring, hub, teeth) - Share(ring, 0, teeth) - Share(0, hub, teeth)) < 1e-12);

    [Fact]
    public void The_play_wanted_gives_a_quarter_of_a_pitch() => Gen.Int[12, 90].Sample(teeth =>
        Math.Abs(Share(RingIndex.SlotMinusKeyFor(teeth, 0.033), 0, teeth) - 0.25) < 1e-12);

    [Fact]
    public void A_key_wider_than_its_slot_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => RingIndex.Solve(new RingIndexInput(36, -1e-6, 0.033)));

    private static double Share(double ring, double hub, int teeth) => RingIndex.Solve(new RingIndexInput(teeth, ring, 0.033, hub)).ShareOfPitch;
}
