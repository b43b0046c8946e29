using System.Text.Json;
using CsCheck;

namespace RebuildApi.Contracts.Tests;

public sealed class LimitsTests
{
    private static readonly Source Invented = new(SourceKind.Invented, "a test");

    [Fact]
    public void A_window_upside_down_cannot_be_made() =>
        Gen.Select(Gen.Long[-1_000_000, 1_000_000], Gen.Long[1, 1_000_000]).Sample((low, excess) =>
        {
            Assert.Throws<ArgumentException>(() => Limits.Between(new Length(low + excess), new Length(low), Invented));
        });

    [Fact]
    public void A_target_outside_its_window_cannot_be_made()
    {
        Assert.Throws<ArgumentException>(() => Limits.Between(new Length(1), new Length(3), Invented, target: new Length(4)));
        Assert.Throws<ArgumentException>(() => Limits.Between(new Length(1), new Length(3), Invented, target: new Length(0)));
    }

    [Fact]
    public void A_window_of_mixed_dimensions_cannot_be_made() =>
        Assert.Throws<ArgumentException>(() => new Limits(new Exact(new Length(1)), new Real(2, Dimension.Angle), null, Invented));

    [Fact]
    public void A_window_without_any_end_cannot_be_made() =>
        Assert.Throws<ArgumentException>(() => new Limits(null, null, new Exact(new Length(1)), Invented));

    [Fact]
    public void The_ends_of_a_window_are_inside_it_and_a_nanometre_beyond_is_not() =>
        Gen.Select(Gen.Long[-1_000_000, 1_000_000], Gen.Long[0, 1_000_000]).Sample((low, width) =>
        {
            var window = Limits.Between(new Length(low), new Length(low + width), Invented);
            return window.Contains(new Length(low)) && window.Contains(new Length(low + width))
                && !window.Contains(new Length(low - 1)) && !window.Contains(new Length(low + width + 1));
        });

    [Fact]
    public void A_window_upside_down_is_not_read_from_JSON_either()
    {
        const string upsideDown =
            """{"low":{"is":"exact","value":2},"high":{"is":"exact","value":1},"target":null,"source":{"kind":"invented","citation":"a test"}}""";

        Assert.ThrowsAny<Exception>(() => JsonSerializer.Deserialize(upsideDown, ContractJson.Default.Limits));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    public void A_quantity_is_a_finite_number(double si) => Assert.Throws<ArgumentException>(() => new Real(si, Dimension.Angle));

    [Fact]
    public void A_length_is_never_an_estimate() => Assert.Throws<ArgumentException>(() => new Real(0.001, Dimension.Length));
}
