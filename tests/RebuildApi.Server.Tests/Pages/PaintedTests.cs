using RebuildApi.Server.Pages;
using RebuildApi.Server.Tests.Kit;
using SkiaSharp;

namespace RebuildApi.Server.Tests.Pages;

/// <summary>Drawings as dots and papers as PDF, without a browser.</summary>
public sealed class PaintedTests
{
    [Fact]
    public async Task A_clearance_as_png_is_white_paper_with_the_window_in_its_colour_and_letters_in_ink()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var first = (string)(await http.Read("/v1/units/u1/clearances?limit=1"))["items"]![0]!["clearance"]!;
        using var picture = SKBitmap.Decode(await http.GetByteArrayAsync($"/v1/units/u1/clearances/{first}.png"));
        Assert.Equal(1440, picture.Width);
        Assert.Equal(SKColors.White, picture.GetPixel(0, 0));
        // Ink of the title, which stands alone in the first 60 rows of dots: without a font there would be none.
        Assert.InRange(Count(picture, 60, c => c.Red < 80 && c.Green < 80), 300, 30_000);
        // The window is a third of #2f8a57 over white.
        Assert.True(Count(picture, picture.Height, c => c is { Red: > 180 and < 205, Green: > 210 and < 226, Blue: > 195 and < 212 }) > 1000);
    }

    [Fact]
    public void Rows_that_fill_many_sheets_have_the_head_on_each_and_a_row_longer_than_a_sheet_is_cut_not_lost()
    {
        var long1 = string.Join(' ', Enumerable.Repeat("word", 3000));
        var paper = new Paper("A title that is long enough to be broken over more than one line of the sheet, since customers name their gearboxes as they like, and more",
        [
            new Grid([new Column("Part", 1), new Column("Read", 1, true)], [.. Enumerable.Range(1, 200).Select(i => Row.Of($"part {i}", new string('9', 90)))], "none"),
            new Grid([new Column("Part", 1)], [Row.Of(long1)], "none"),
            new Grid([new Column("Part", 1)], [], "Nothing was recorded."),
            new Signatures(["Built by, date", "Checked by, date", "Received by, date"]),
        ]);
        var pdf = new PaperPdf(paper, PageWords.English, DateTimeOffset.UnixEpoch).Write();
        var text = System.Text.Encoding.Latin1.GetString(pdf);
        Assert.StartsWith("%PDF-1", text, StringComparison.Ordinal);
        // 200 rows of two lines at 26 a sheet, then 3000 words at some 90 a line.
        Assert.InRange(System.Text.RegularExpressions.Regex.Count(text, "/Type /Page\\b"), 8, 14);
        Assert.True(pdf.Length < 500_000, $"{pdf.Length} bytes");
    }

    [Fact]
    public async Task Every_paper_comes_as_pdf_and_one_that_is_not_there_says_why()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        foreach (var path in new[] { "/v1/units/u1/teardown.pdf", "/v1/units/u1/assembly.pdf", "/v1/units/u1/record.pdf", "/v1/families/brackenmere-4/sheet.pdf" })
        {
            using var answer = await http.GetAsync(path);
            Assert.Equal("application/pdf", answer.Content.Headers.ContentType!.MediaType);
        }

        using var none = await http.GetAsync("/v1/units/u1/quote.pdf");
        Assert.Contains("unknown-quote", await none.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var unplanned = await http.GetAsync("/v1/units/u1/plan.png");
        Assert.Contains("unknown-plan", await unplanned.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_record_with_nothing_in_it_says_so_and_one_with_names_as_long_as_they_may_be_holds_them_all()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var bare = await http.GetStringAsync("/units/u1/record");
        foreach (var said in new[] { "Nobody has signed for anything yet.", "Nothing was left out.", "None was read since it went together.", "None was kept: the gearbox has passed no gate." })
            Assert.Contains(said, bare, StringComparison.Ordinal);

        string Long(char letter, int most) => new(letter, most);
        var (customer, words, person, reason) = (Long('C', 200), Long('W', 1900), Long('P', 100), Long('R', 500));
        await http.Make("/v1/units", $$"""{ "id": "long", "tag": "{{Long('T', 60)}}", "family": "brackenmere-4", "person": "{{person}}", "customer": "{{customer}}", "words": "{{words}}" }""");
        await http.Make("/v1/units/long/stages", $$"""{ "to": "pre-strip", "person": "{{person}}", "note": "{{words}}" }""");
        await http.Make("/v1/units/long/stages", $$"""{ "to": "teardown", "person": "{{person}}", "notAvailable": [{ "requirement": "pre-strip-readings", "reason": "{{reason}}" }] }""");
        await http.Make("/v1/units/long/sign-offs", $$"""{ "check": "interlock", "passed": false, "person": "{{person}}", "bench": "{{Long('B', 100)}}", "note": "{{words}}" }""");
        var whole = await http.GetStringAsync("/units/long/record");
        foreach (var said in new[] { customer, words, person, reason, "It failed", "Kept at the last gate" })
            Assert.Contains(said, whole, StringComparison.Ordinal);
        var pdf = await http.GetByteArrayAsync("/v1/units/long/record.pdf");
        await File.WriteAllBytesAsync(Path.Combine(AppContext.BaseDirectory, "long-record.pdf"), pdf);
        Assert.InRange(System.Text.RegularExpressions.Regex.Count(System.Text.Encoding.Latin1.GetString(pdf), "/Type /Page\\b"), 2, 12);
    }

    private static int Count(SKBitmap picture, int rows, Func<SKColor, bool> what) =>
        Enumerable.Range(0, rows).Sum(y => Enumerable.Range(0, picture.Width).Count(x => what(picture.GetPixel(x, y))));
}
