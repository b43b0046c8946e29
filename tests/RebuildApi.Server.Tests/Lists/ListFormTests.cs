using CsCheck;
using RebuildApi.Server.Requests.Tables;
using RebuildApi.Server.Results;
using RebuildApi.Server.Tests.Fuzz;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Lists;

public sealed class ListFormTests
{
    [Fact]
    public async Task Every_list_comes_in_three_forms_that_agree_on_how_many_there_are()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units/u1/findings", """{ "person": "Ada", "bench": "b", "findings": [{ "position": "third-gear", "sound": true }] }""");
        await OtherShop.Open(server.Database);
        var lists = (await ApiDocument.Of(http)).Operations.Where(o => o.Path.EndsWith(".csv", StringComparison.Ordinal)).ToArray();
        Assert.NotEmpty(lists);
        foreach (var list in lists)
        {
            var csv = await http.GetStringAsync(list.Filled());
            var ndjson = await http.GetStringAsync(list.Filled()[..^4] + ".ndjson");
            var page = await http.Read(list.Filled()[..^4] + "?limit=500");
            var count = page["items"]!.AsArray().Count;
            Assert.Contains($"\r\n#end,{count}", csv, StringComparison.Ordinal);
            Assert.EndsWith($"{{\"end\":true,\"rows\":{count}}}\n", ndjson, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Following_next_gives_every_entry_once()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        for (var i = 0; i < 5; i++)
            await http.Make("/v1/units", $$"""{ "id": "u{{i}}", "tag": "T", "family": "brackenmere-4", "person": "Ada" }""");
        var seen = new List<string>();
        for (var next = "/v1/units?limit=2"; next is not null;)
        {
            var page = await http.Read(next);
            seen.AddRange(page["items"]!.AsArray().Select(u => (string)u!["id"]!));
            next = page["next"] is { } address ? new Uri((string)address!).PathAndQuery : null;
        }

        Assert.Equal(["u0", "u1", "u2", "u3", "u4"], seen);
    }

    [Fact]
    public async Task A_table_begins_with_a_byte_order_mark_only_when_asked_and_takes_other_separators()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        Assert.NotEqual(0xEF, (await http.GetByteArrayAsync("/v1/units.csv"))[0]);
        Assert.Equal([0xEF, 0xBB, 0xBF], (await http.GetByteArrayAsync("/v1/units.csv?bom=1"))[..3]);
        Assert.StartsWith("id;tag;family.id", await http.GetStringAsync("/v1/units.csv?sep=;"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+1", "'+1")]
    [InlineData("-0.012", "'-0.012")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("plain", "plain")]
    [InlineData("a,b", "\"a,b\"")]
    [InlineData("a\"b", "\"a\"\"b\"")]
    public void Text_that_a_spreadsheet_would_run_is_guarded(string text, string cell) => Assert.Equal(cell, CsvCell.Text(text, ','));

    [Theory]
    [InlineData("-0.012")]
    [InlineData("1e-05")]
    public void Numbers_are_left_alone(string number) => Assert.Equal(number, CsvCell.Number(number, ','));

    [Fact]
    public void Taking_the_guard_off_gives_the_text_back() =>
        Gen.String.Where(t => !t.StartsWith('\'')).Sample(text => Assert.Equal(text, CsvCell.Unguarded(Unquoted(CsvCell.Text(text, ',')))));

    private static string Unquoted(string cell) =>
        cell.StartsWith('"') ? cell[1..^1].Replace("\"\"", "\"", StringComparison.Ordinal) : cell;
}
