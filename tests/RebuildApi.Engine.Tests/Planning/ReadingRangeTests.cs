using RebuildApi.Engine.Planning;

namespace RebuildApi.Engine.Tests.Planning;

/// <summary>The ends of a range hold and what is beside them does not. Computed here, no source.</summary>
public sealed class ReadingRangeTests
{
    [Theory]
    [InlineData(100, 200, 130, 170, 130L, 170L)]
    [InlineData(100, 200, 90, 150, 90L, 150L)]
    [InlineData(100, 200, 150, 1000, 150L, 1000L)]
    [InlineData(-200, -100, -170, -130, -170L, -130L)]
    [InlineData(5, 5, 3, 9, 3L, 9L)]
    [InlineData(100, 200, 300, 400, null, null)]
    [InlineData(100, 200, 0, 100_000, null, null)]
    public void The_ends_are_found_to_one(long from, long to, long low, long high, long? first, long? last)
    {
        var asked = 0;
        var found = new ReadingRange(n =>
        {
            asked++;
            return n >= low && n <= high;
        }).In(from, to);

        Assert.Equal((first, last), (found?.Low, found?.High));
        Assert.InRange(asked, 1, 60);
    }

    [Fact]
    public void Of_two_ranges_the_wider_is_named() =>
        Assert.Equal((150L, 200L), new ReadingRange(n => n is (>= 100 and <= 120) or (>= 150 and <= 200)).In(100, 200));
}
