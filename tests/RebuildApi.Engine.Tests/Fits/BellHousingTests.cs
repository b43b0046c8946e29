using RebuildApi.Contracts;
using RebuildApi.Engine.Fits;

namespace RebuildApi.Engine.Tests.Fits;

public class BellHousingTests
{
    [Fact] // A vehicle maker's published sheet prints these readings and shims; recomputed here.
    public void Readings_of_0_9_minus_3_minus_4_thousandths_want_shims_of_9_0_12_13_and_are_over_10()
    {
        var face = BellHousing.Of([Thousandths(0), Thousandths(9), Thousandths(-3), Thousandths(-4)], Thousandths(10));

        Assert.Equal([Thousandths(9), Thousandths(0), Thousandths(12), Thousandths(13)], face.Shims.AsEnumerable());
        Assert.Equal(Thousandths(13), face.Runout);
        Assert.False(face.IsWithin);
    }

    [Fact] // TM 10-3930-664-24 prints 0.005 for these readings; largest minus smallest is 0.005, their sum would be 0.004.
    public void Runout_is_largest_minus_smallest_and_not_a_sum() =>
        Assert.Equal(Thousandths(5), BellHousing.Of([Thousandths(0), Thousandths(3), Thousandths(-2), Thousandths(3)], Thousandths(8)).Runout);

    [Fact]
    public void Limit_is_included() => Assert.True(BellHousing.Of([Thousandths(0), Thousandths(4), Thousandths(8)], Thousandths(8)).IsWithin);

    [Fact]
    public void Two_corners_make_no_face() => Assert.Throws<ArgumentException>("readings", () => BellHousing.Of([Thousandths(0), Thousandths(1)], Thousandths(8)));

    private static Length Thousandths(int value) => Length.Inches(value / 1000m);
}
