using System.Text.Json;
using RebuildApi.Engine.Identity;

namespace RebuildApi.Engine.Tests.Identity;

public sealed class CanonicalTests
{
    /// <summary>RFC 8785 section 3.2.2 and 3.2.3: the example object and its canonical form.</summary>
    [Fact]
    public void The_example_of_RFC_8785_comes_out_as_printed()
    {
        const string Input = """
            {
              "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
              "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
              "literals": [null, true, false]
            }
            """;
        const string Expected =
            "{\"literals\":[null,true,false],\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],\"string\":\"€$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}";
        Assert.Equal(Expected, CanonicalOf(Input));
    }

    /// <summary>RFC 8785 Appendix B, number serialization samples.</summary>
    [Theory]
    [InlineData(0x0000000000000000, "0")]
    [InlineData(unchecked((long)0x8000000000000000), "0")]
    [InlineData(0x0000000000000001, "5e-324")]
    [InlineData(0x7fefffffffffffff, "1.7976931348623157e+308")]
    [InlineData(0x4340000000000000, "9007199254740992")]
    [InlineData(0x4430000000000000, "295147905179352830000")]
    [InlineData(0x44b52d02c7e14af5, "9.999999999999997e+22")]
    [InlineData(0x44b52d02c7e14af6, "1e+23")]
    [InlineData(0x444b1ae4d6e2ef4e, "999999999999999700000")]
    [InlineData(0x444b1ae4d6e2ef50, "1e+21")]
    [InlineData(0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7")]
    [InlineData(0x3eb0c6f7a0b5ed8d, "0.000001")]
    [InlineData(0x41b3de4355555553, "333333333.3333332")]
    [InlineData(0x41b3de4355555555, "333333333.3333333")]
    public void Numbers_come_out_as_in_RFC_8785_appendix_B(long bits, string expected) =>
        Assert.Equal(expected, CanonicalOf(JsonSerializer.Serialize(BitConverter.Int64BitsToDouble(bits))));

    [Fact]
    public void Members_are_ordered_by_code_unit_whatever_order_they_came_in() =>
        Assert.Equal(CanonicalOf("{\"b\":1,\"a\":{\"d\":2,\"c\":3}}"), CanonicalOf("{\"a\":{\"c\":3,\"d\":2},\"b\":1}"));

    private static string CanonicalOf(string json)
    {
        using var document = JsonDocument.Parse(json);
        return Canonical.Text(document.RootElement);
    }
}
