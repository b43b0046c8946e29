using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using RebuildApi.Server.Composition.Labels;
using RebuildApi.Server.Tests.Kit;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace RebuildApi.Server.Tests.Stages;

public sealed partial class LabelTests
{
    private const string Keys = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    private static IEnumerable<LabelCode> Codes =>
        from number in Enumerable.Range(0, 3000).Select(i => (i * 37L) + 1).Concat([9_999, 10_000, 99_998, 123_456_789_012])
        from sort in new[] { LabelCode.OfUnit, LabelCode.OfPart }
        select new LabelCode(sort, number);

    [Fact]
    public void Every_wrong_character_is_caught()
    {
        foreach (var code in Codes)
        {
            var text = code.ToString();
            for (var i = 0; i < text.Length; i++)
            {
                foreach (var key in Keys.Where(k => k != text[i]))
                    AssertNotAnother(code, text[..i] + key + text[(i + 1)..]);
            }
        }
    }

    [Fact]
    public void Every_two_neighbours_that_changed_places_are_caught()
    {
        foreach (var code in Codes)
        {
            var text = code.ToString();
            for (var i = 0; i + 1 < text.Length; i++)
                AssertNotAnother(code, text[..i] + text[i + 1] + text[i] + text[(i + 2)..]);
        }
    }

    [Theory]
    [InlineData("u 1042-b")]
    [InlineData("UIO42B")]
    [InlineData("UlO42b")]
    public void Blanks_case_and_letters_that_look_like_digits_do_not_matter(string typed)
    {
        // 2×2 + 4×3 + 0×4 + 1×5 + 1 = 22; 22 modulo 23 is the last of 23 letters. Worked by hand.
        Assert.Equal("U1042Z", new LabelCode('U', 1042).ToString());
        Assert.Equal(new LabelCode('U', 1042), LabelCode.Read(typed.Replace('b', 'z').Replace('B', 'Z')).Code);
    }

    [Fact]
    public async Task A_unit_and_a_part_get_codes_once_and_are_found_by_them_and_a_slip_is_named()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units/u1/components", """{ "position": "third-gear", "id": "c1" }""");
        var unit = await http.Make("/v1/labels", """{ "unit": "u1" }""");
        var part = await http.Make("/v1/labels", """{ "component": "c1" }""");
        using var again = await http.Send(HttpMethod.Post, "/v1/labels", """{ "component": "c1" }""");
        var code = (string)part["code"]!;
        Assert.Equal(("U1001", "P1002"), (((string)unit["code"]!)[..5], code[..5]));
        Assert.Contains(code, await again.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal("c1", (string)(await http.Read("/v1/labels/" + code.ToLowerInvariant()))["component"]!);
        Assert.Equal(code, (string)(await http.Read("/v1/components/c1"))["code"]!);
        using var slip = await http.GetAsync(new Uri($"/v1/labels/P1003{code[^1]}", UriKind.Relative));
        var problem = await slip.Problem();
        Assert.Equal((HttpStatusCode.UnprocessableEntity, "mistyped-label"), (slip.StatusCode, (string)problem["code"]!));
        Assert.Contains($"would be {new LabelCode('P', 1003).CheckLetter}, not {code[^1]}", (string)problem["detail"]!, StringComparison.Ordinal);
        using var nobody = await http.GetAsync(new Uri($"/v1/labels/{new LabelCode('P', 1003)}", UriKind.Relative));
        Assert.Equal("unknown-label", (string)(await nobody.Problem())["code"]!);
        Assert.Contains(code, await http.GetStringAsync("/units/u1/labels"), StringComparison.Ordinal);
    }

    /// <summary>ISO/IEC 18004, held against another library's reader.</summary>
    [Fact]
    public async Task The_drawn_code_is_read_by_another_library()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var code = (string)(await http.Make("/v1/labels", """{ "unit": "u1" }"""))["code"]!;
        var svg = await http.GetStringAsync($"/v1/labels/{code}.svg");
        Assert.Equal(code, Decoded(svg));
    }

    private static string? Decoded(string svg)
    {
        const int scale = 6;
        var squares = Square().Matches(svg).Select(m => (X: Number(m.Groups[1]), Y: Number(m.Groups[2]))).ToArray();
        var side = (squares.Max(s => Math.Max(s.X, s.Y)) + 5) * scale;
        var pixels = Enumerable.Repeat((byte)255, side * side * 3).ToArray();
        foreach (var (x, y) in squares)
        {
            for (var i = 0; i < scale * scale; i++)
                Array.Fill(pixels, (byte)0, 3 * ((((y * scale) + (i / scale)) * side) + (x * scale) + (i % scale)), 3);
        }

        var bitmap = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(pixels, side, side)));
        return new QRCodeReader().decode(bitmap)?.Text;
    }

    private static int Number(Group group) => int.Parse(group.Value, CultureInfo.InvariantCulture);

    private static void AssertNotAnother(LabelCode code, string typed)
    {
        if (LabelCode.Read(typed).Code is { } read)
            Assert.True(read == code, $"{typed} was read as {read} instead of {code}.");
    }

    [GeneratedRegex(@"M(\d+) (\d+)h1v1h-1z")]
    private static partial Regex Square();
}
