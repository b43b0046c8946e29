using System.Text;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Units;

/// <summary>The teardown sheet, filled in with a spreadsheet and posted back, says the same as the same things posted as JSON.</summary>
public sealed class SheetRoundTripTests
{
    [Fact]
    public async Task A_filled_in_sheet_gives_the_same_verdicts_as_JSON()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units", $$"""{ "id": "u2", "tag": "T-2", "family": "{{ShopServer.Family}}", "person": "Ada" }""");
        var sheet = await http.GetStringAsync($"/v1/families/{ShopServer.Family}/sheet.csv?units=in&sep=;&bom=1");
        var filled = Fill(sheet);
        await Post(http, "/v1/units/u1/measurements", filled);
        await Post(http, "/v1/units/u1/findings", filled);
        await Post(http, "/v1/units/u1/trials", filled);

        await http.Make("/v1/units/u2/measurements", """
            { "person": "Ada", "bench": "bench-1", "instrument": "mic-25",
              "measurements": [{ "at": "third-gear/length", "readings": [{ "value": 1.5101, "unit": "in" }, { "value": 1.5102, "unit": "in" }, { "value": 1.5101, "unit": "in" }, { "value": 1.5100, "unit": "in" }] }] }
            """);
        await http.Make("/v1/units/u2/findings", """
            { "person": "Ada", "bench": "bench-1", "findings": [
              { "position": "third-gear", "damage": { "class": "macropitting", "extent": "moderate" } },
              { "position": "third-gear", "attribute": { "id": "vintage", "value": "late" } }, { "position": "second-gear", "sound": true }] }
            """);
        await http.Make("/v1/units/u2/trials", """
            { "clearance": "third-end-play", "person": "Ada", "bench": "bench-1", "pieces": [{ "member": "087" }], "readings": [{ "tight": true }, { "tight": true }] }
            """);

        foreach (var answers in new[] { "verdicts", "clearances", "pairings" })
            Assert.Equal(await Outcomes(http, "u2", answers), await Outcomes(http, "u1", answers));
    }

    [Fact]
    public async Task A_blank_sheet_says_that_nothing_was_filled_in()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var sheet = await http.GetByteArrayAsync($"/v1/families/{ShopServer.Family}/sheet.csv");
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/measurements", sheet, "text/csv", ("Idempotency-Key", "k"));
        Assert.Equal("bad-count", (string)(await answer.Problem())["errors"]![0]!["code"]!);
    }

    [Fact]
    public async Task A_cell_that_can_t_be_read_is_named_by_row_and_column_and_nothing_is_kept()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        const string Table = "position,what,id,unit,value1,person,bench\r\nthird-gear,reading,length,in,1.51,Ada,b\r\nthird-gear,reading,length,in,\"1,51\",,\r\n";
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/measurements", Encoding.UTF8.GetBytes(Table), "text/csv", ("Idempotency-Key", "k"));
        Assert.Equal("row/3/value1", (string)(await answer.Problem())["errors"]![0]!["pointer"]!);
        Assert.Empty((await http.Read("/v1/units/u1/measurements"))["items"]!.AsArray());
    }

    [Fact]
    public async Task An_unknown_column_is_refused_with_the_nearest_name()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/findings", "position,valeu1\r\nthird-gear,sound\r\n"u8.ToArray(), "text/csv");
        Assert.Equal("Did you mean value1?", (string)(await answer.Problem())["errors"]![0]!["fix"]!);
    }

    // What a person does in a spreadsheet: writes into some cells, leaves the rest, and saves with the same separator.
    private static string Fill(string sheet)
    {
        var lines = sheet.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split(';')).ToArray();
        var columns = lines[0].Select((name, i) => (name, i)).ToDictionary(c => c.name.TrimStart('\uFEFF'), c => c.i);
        foreach (var cells in lines.Skip(1).Where(c => c[0] != "#end"))
            FillRow(cells, columns);
        return string.Join("\r\n", lines.Select(l => string.Join(';', l))) + "\r\n";
    }

    private static void FillRow(string[] cells, Dictionary<string, int> columns)
    {
        void Put(string column, string text) => cells[columns[column]] = text;
        Put("person", "Ada");
        Put("bench", "bench-1");
        switch ((cells[columns["position"]], cells[columns["what"]], cells[columns["id"]]))
        {
            case ("third-gear", "reading", "length"):
                Put("value1", "1.5101");
                Put("value2", "1.5102");
                Put("value3", "1.5101 1.5100");
                Put("instrument", "mic-25");
                break;
            case ("third-gear", "inspection", _):
                Put("value1", "macropitting moderate");
                break;
            case ("third-gear", "attribute", "vintage"):
                Put("value1", "late");
                break;
            case ("second-gear", "inspection", _):
                Put("value1", "Sound");
                break;
            case (_, "trial", "third-end-play"):
                Put("value1", "tight");
                Put("value2", "Tight");
                Put("piece", "087");
                break;
        }
    }

    private static async Task Post(HttpClient http, string path, string csv)
    {
        using var answer = await http.Send(HttpMethod.Post, path, Encoding.UTF8.GetBytes(csv), "text/csv; charset=utf-8", ("Idempotency-Key", path));
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
    }

    private static async Task<string> Outcomes(HttpClient http, string unit, string answers)
    {
        var items = (await http.Read($"/v1/units/{unit}/{answers}?limit=500"))["items"]!.AsArray();
        return string.Join('\n', items.Select(i => $"{i!["subject"] ?? i["clearance"] ?? i["pairing"]} {i["outcome"]} {i["disposition"]} {Values(i)}"));
    }

    private static string Values(JsonNode item) =>
        string.Join(' ', (item["verdicts"]?.AsArray() ?? []).Select(v => $"{v!["subject"]}={v["outcome"]} {v["value"]?["value"]?["value"]}"));
}
