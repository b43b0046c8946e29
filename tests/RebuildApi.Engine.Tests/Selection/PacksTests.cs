using CsCheck;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pieces;
using RebuildApi.Engine.Selection;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Selection;

public class PacksTests
{
    private static readonly Series Shims = SeriesOf(0.10m, 0.15m, 0.30m);

    [Fact]
    public void Pack_of_fewer_pieces_stands_for_all_of_its_thickness()
    {
        var packs = Packs.Of(Shims, 3);

        var thirty = Assert.Single(packs, p => p.Thickness == Length.Millimetres(0.30m));
        Assert.Equal("s-3", Assert.Single(thirty.Members));
    }

    [Fact]
    public void Pack_needs_the_pieces_that_there_are()
    {
        var packs = Packs.Of(Shims, 3, new Dictionary<string, int> { ["s-1"] = 1, ["s-2"] = 2 });

        Assert.Equal([0.10m, 0.15m, 0.25m, 0.30m, 0.40m], packs.Select(p => p.Thickness.InMillimetres));
    }

    [Fact]
    public void Every_pack_is_kept_where_pieces_are_few()
    {
        var packs = Packs.All(Shims, 2, new Dictionary<string, int> { ["s-2"] = 2, ["s-3"] = 1 });

        Assert.Equal(["s-2", "s-3", "s-2+s-2", "s-2+s-3"], packs.OrderBy(p => p.Members.Length).ThenBy(p => p.Thickness).Select(p => string.Join('+', p.Members)));
    }

    [Fact]
    public void Of_two_packs_alike_the_cheaper_one_is_taken_and_an_unknown_price_is_never_the_cheaper()
    {
        var series = Shims with { Members = [new SeriesMember("plain", Length.Millimetres(0.10m)), new SeriesMember("coated", Length.Millimetres(0.10m))] };

        var pack = Assert.Single(Packs.Of(series, 1, null, new Dictionary<string, long> { ["coated"] = 120 }));

        Assert.Equal("coated", Assert.Single(pack.Members));
        Assert.Equal(120, pack.Cost);
    }

    [Fact]
    public void Packs_are_those_of_trying_every_stack() => Gen.Select(Gen.Int[1, 30].Array[1, 5], Gen.Int[1, 4]).Sample((hundredths, most) =>
    {
        var series = SeriesOf([.. hundredths.Distinct().Select(h => h / 100m)]);
        var stacks = new HashSet<decimal> { 0 };
        var expected = new HashSet<decimal>();
        for (var pieces = 0; pieces < most; pieces++)
        {
            stacks = [.. stacks.SelectMany(s => series.Members.Select(m => s + m.Thickness.InMillimetres))];
            expected.UnionWith(stacks);
        }

        Assert.Equal(expected.Order(), Packs.Of(series, most).Select(p => p.Thickness.InMillimetres));
    });

    [Fact]
    public void Pack_without_a_piece_is_refused() => Assert.Throws<ArgumentException>("maxPieces", () => Packs.Of(Shims, 0));

    private static Series SeriesOf(params decimal[] millimetres) => new(
        "s", "shim", [.. millimetres.Select((t, i) => new SeriesMember($"s-{i + 1}", Length.Millimetres(t)))], Length.Zero, FamilyBuilder.Invented);
}
