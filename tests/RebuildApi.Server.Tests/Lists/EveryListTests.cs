using RebuildApi.Server.Tests.Fuzz;
using RebuildApi.Server.Tests.Kit;
using Sylvan.Data.Csv;

namespace RebuildApi.Server.Tests.Lists;

/// <summary>Every table of the document is safe to open in a spreadsheet, whatever people wrote.</summary>
public sealed class EveryListTests
{
    private const string Evil = "=HYPERLINK(1)";

    [Fact]
    public async Task Every_table_begins_with_a_byte_order_mark_on_request_and_holds_no_formula()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var shop = await PlayedShop.Play(http);
        await OtherShop.Open(server.Database);
        await Write(http);
        var cells = new List<(string Path, string Text)>();
        foreach (var list in (await ApiDocument.Of(http)).Operations.Where(o => o.Path.EndsWith(".csv", StringComparison.Ordinal)))
        {
            var bytes = await http.GetByteArrayAsync(shop.Filled(list.Path) + "?bom=true");
            Assert.Equal([0xEF, 0xBB, 0xBF], bytes[..3]);
            cells.AddRange((await Cells(bytes)).Select(text => (list.Path, text)));
        }

        Assert.Contains(cells, c => c.Text.StartsWith("'=", StringComparison.Ordinal));
        Assert.DoesNotContain(cells, c => c.Text.Length > 0 && "=+-@\t\r".Contains(c.Text[0], StringComparison.Ordinal) && !double.TryParse(c.Text, System.Globalization.CultureInfo.InvariantCulture, out _));
    }

    private static async Task Write(HttpClient http)
    {
        await http.Make("/v1/units", $$"""{ "id": "evil", "tag": "{{Evil}}", "family": "brackenmere-4", "person": "+{{Evil}}" }""");
        await http.Make("/v1/webhooks", $$"""{ "name": "{{Evil}}", "address": "http://127.0.0.1:9/", "kinds": ["comeback"], "person": "@a" }""");
        await http.Make($"/v1/units/{PlayedShop.Unit}/findings", $$"""{ "person": "{{Evil}}", "bench": "-{{Evil}}", "findings": [{ "position": "third-gear", "sound": true }] }""");
    }

    private static async Task<IReadOnlyList<string>> Cells(byte[] utf8)
    {
        using var reader = new StreamReader(new MemoryStream(utf8));
        await using var csv = await CsvDataReader.CreateAsync(reader, new CsvDataReaderOptions { HasHeaders = false, Delimiter = ',' });
        var cells = new List<string>();
        while (await csv.ReadAsync())
            cells.AddRange(Enumerable.Range(0, csv.RowFieldCount).Select(csv.GetString));
        return cells;
    }
}
