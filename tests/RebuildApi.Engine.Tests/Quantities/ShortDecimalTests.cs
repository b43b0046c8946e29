using System.Globalization;
using System.Text;
using CsCheck;
using RebuildApi.Engine.Quantities;

namespace RebuildApi.Engine.Tests.Quantities;

public class ShortDecimalTests
{
    [Fact]
    public void A_short_number_reads_as_the_long_way_reads_it() =>
        Gen.Select(Gen.Long[-999_999_999_999, 999_999_999_999], Gen.Int[0, 6], Gen.Const(25_400_000L)).Sample((digits, decimals, factor) =>
        {
            var text = new decimal(Math.Abs(digits) is var d ? (int)(d & 0xFFFFFFFF) : 0, (int)(Math.Abs(digits) >> 32), 0, digits < 0, (byte)decimals).ToString(CultureInfo.InvariantCulture);

            Assert.True(ShortDecimal.TryRead(Encoding.UTF8.GetBytes(text), out var number));

            var slow = NumberText.TryRead(text)!.Value;
            Assert.Equal(slow.TimesWhole(factor) is { } whole ? whole : (long?)null, number.TryTimes(factor, out var fast) ? fast : null);
            Assert.Equal(slow.ToDouble(), number.ToDouble());
        });

    [Theory]
    [InlineData("")]
    [InlineData("-")]
    [InlineData(".5")]
    [InlineData("5.")]
    [InlineData("1e3")]
    [InlineData("1.2.3")]
    [InlineData("0x1")]
    [InlineData("1234567890123456789")]
    public void Anything_else_is_left_to_the_long_way(string text) => Assert.False(ShortDecimal.TryRead(Encoding.UTF8.GetBytes(text), out _));
}
