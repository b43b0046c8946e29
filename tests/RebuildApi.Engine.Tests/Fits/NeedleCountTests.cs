using RebuildApi.Contracts;
using RebuildApi.Engine.Fits;

namespace RebuildApi.Engine.Tests.Fits;

public class NeedleCountTests
{
    [Theory] // Computed here, no source: journal 22.0, rollers 5.5.
    [InlineData(15, 3.33, NeedleOutcome.Complete)]
    [InlineData(14, 8.87, NeedleOutcome.RollerMissing)]
    public void Rollers_of_5_5_on_a_journal_of_22_are_fifteen(int count, double leftover, NeedleOutcome outcome)
    {
        var answer = NeedleCount.Of(Length.Millimetres(22.0m), Length.Millimetres(5.5m), count);

        Assert.Equal(leftover, answer.Leftover * 1000, 2);
        Assert.Equal((outcome, 15), (answer.Outcome, answer.Most));
    }

    [Fact]
    public void Sixteen_do_not_go_in() => Assert.Equal(NeedleOutcome.TooMany, NeedleCount.Of(Length.Millimetres(22.0m), Length.Millimetres(5.5m), 16).Outcome);

    [Fact]
    public void Diameters_and_a_count_above_zero_are_asked_for()
    {
        Assert.Throws<ArgumentException>("journal", () => NeedleCount.Of(Length.Zero, Length.Millimetres(5), 9));
        Assert.Throws<ArgumentException>("roller", () => NeedleCount.Of(Length.Millimetres(22), Length.Zero, 9));
        Assert.Throws<ArgumentException>("count", () => NeedleCount.Of(Length.Millimetres(22), Length.Millimetres(5), 0));
    }
}
