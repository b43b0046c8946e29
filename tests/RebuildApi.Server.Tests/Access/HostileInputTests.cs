using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Access;

/// <summary>Input that was made to do harm, from somebody who has a token.</summary>
public sealed class HostileInputTests
{
    private static readonly string[] Climbing =
        ["..%2fshop.db", "%2e%2e%2fshop.db", "..%5cshop.db", "%2fetc%2fpasswd", "C:%5cshop.db", "families%2f..%2fshop.db", "....%2f%2fshop.db"];

    // CWE-22.
    [FileFact]
    public async Task No_name_in_an_address_climbs_out_of_a_folder()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        foreach (var name in Climbing)
        {
            foreach (var path in new[] { "/v1/plugins/{0}", "/v1/families/{0}", "/v1/families/{0}/sheet.csv", "/v1/units/{0}", "/v1/units/{0}/clearances/{0}.svg", "/v1/tokens/{0}", "/v1/stock/{0}", "/problems/{0}", "/bench/{0}" })
                await Refuses(http, HttpMethod.Get, string.Format(System.Globalization.CultureInfo.InvariantCulture, path, name), null);
            await Refuses(http, HttpMethod.Post, $"/v1/plugins/{name}/reloads", "{}");
            await Refuses(http, HttpMethod.Post, $"/v1/plugins/{name}/approvals", $$"""{ "sha256": "{{new string('0', 64)}}", "person": "Ada" }""");
        }

        Assert.Equal(["shop.db"], Directory.EnumerateFiles(server.DataFolder).Select(f => Path.GetFileName(f)!).Where(f => !f.StartsWith("shop.db-", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("../u2")]
    [InlineData("/etc/u2")]
    [InlineData("u2\\r\\nSet-Cookie: a=b")]
    [InlineData("u2\\u0000")]
    [InlineData("u2\\u0085x")]
    [InlineData("u2\\u2028x")]
    public async Task No_id_in_a_body_brings_a_path_or_a_line_end_into_a_header(string id)
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        foreach (var (path, body) in new[]
        {
            ("/v1/units", $$"""{ "id": "{{id}}", "tag": "T-2", "family": "brackenmere-4", "person": "Ada" }"""),
            ("/v1/tokens", $$"""{ "name": "{{id}}", "scope": "read" }"""),
            ("/v1/instruments", $$"""{ "id": "{{id}}", "name": "M", "type": "outside-micrometer", "resolution": { "value": 0.001, "unit": "mm" }, "limitOfError": { "value": 0.004, "unit": "mm" } }"""),
        })
        {
            using var answer = await http.Send(HttpMethod.Post, path, body, ("Idempotency-Key", "k"));
            Assert.Equal("invalid-body", (string)(await answer.Problem())["code"]!);
            Assert.False(answer.Headers.Contains("Set-Cookie"));
        }
    }

    // CWE-113: the only header made from an address is where a page sends who is not signed in.
    [Theory]
    [InlineData("/bench/a%0d%0aSet-Cookie:%20a=b")]
    [InlineData("/bench/a%0aX-Evil:%201")]
    [InlineData("/units/%E5%98%8A%E5%98%8DX-Evil:1")]
    [InlineData("/?a=%0d%0aX-Evil:%201")]
    public async Task No_address_brings_a_line_end_into_a_header(string path)
    {
        await using var shop = await RunningShop.Start();
        var answer = await shop.Raw($"GET {path} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
        var head = answer.Split("\r\n\r\n")[0].Split("\r\n");
        Assert.StartsWith("HTTP/1.1 302", head[0], StringComparison.Ordinal);
        Assert.StartsWith("Location: /sign-in?next=%2F", head.Single(h => h.StartsWith("Location", StringComparison.OrdinalIgnoreCase)), StringComparison.Ordinal);
        Assert.DoesNotContain(head, h => h.StartsWith("X-Evil", StringComparison.OrdinalIgnoreCase) || h.StartsWith("Set-Cookie", StringComparison.OrdinalIgnoreCase));
    }

    // CWE-409: half a gigabyte in half a megabyte. The one endless line is given up after the longest that a row may have.
    [Theory]
    [InlineData("gzip")]
    [InlineData("br")]
    public async Task A_body_that_unpacks_to_one_endless_row_is_given_up_long_before_its_end(string encoding)
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var bomb = Packed(encoding, Enumerable.Repeat(new string('a', 1 << 20), 512));
        Assert.True(bomb.Length < 1 << 20);
        using var answer = await Send(http, "/v1/checks", bomb, "application/x-ndjson", encoding);
        var last = JsonNode.Parse((await answer.Content.ReadAsStringAsync()).Split('\n', StringSplitOptions.RemoveEmptyEntries)[^1])!;
        Assert.False((bool)last["complete"]!, last.ToJsonString());
        Assert.Equal("row-too-long", (string)last["error"]!["code"]!);
    }

    // A thousand times its size when unpacked, and answered row by row: LineRun holds a few blocks of the longest row and nothing else.
    [Fact]
    public async Task A_body_that_unpacks_to_very_many_rows_is_answered_to_its_end()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var bomb = Packed("gzip", Enumerable.Repeat(new string('\n', 1 << 20), 64).Append("{}"));
        Assert.True(bomb.Length < 1 << 17);
        using var answer = await Send(http, "/v1/checks", bomb, "application/x-ndjson", "gzip");
        var lines = (await answer.Content.ReadAsStringAsync()).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal((64 << 20) + 1, (int)JsonNode.Parse(lines[0])!["row"]!);
        Assert.True((bool)JsonNode.Parse(lines[^1])!["complete"]!);
    }

    [Fact]
    public async Task Where_nothing_is_unpacked_a_packed_body_is_no_JSON()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var answer = await Send(http, "/v1/units", Packed("gzip", ["""{ "tag": "T" }"""]), "application/json", "gzip");
        Assert.Equal("malformed-json", (string)(await answer.Problem())["code"]!);
    }

    [Fact]
    public async Task A_table_has_an_end_to_its_rows_columns_and_cells()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await Refused("/v1/parts/imports", "number,name\n" + string.Concat(Enumerable.Repeat("a,b\n", 20_001)));
        await Refused("/v1/parts/imports", string.Join(',', Enumerable.Range(0, 100_000)) + "\n1\n");
        await Refused("/v1/parts/imports", "number,name\n\"" + new string('x', 8 << 20));
        await Refused("/v1/units/u1/findings", "position,person\n" + string.Concat(Enumerable.Repeat("third-gear,Ada\n", 5001)));

        async Task Refused(string path, string table)
        {
            using var answer = await http.Send(HttpMethod.Post, path, Encoding.UTF8.GetBytes(table), "text/csv", ("Idempotency-Key", "k"));
            Assert.True((int)answer.StatusCode is 400 or 413 or 422, $"It was answered with {answer.StatusCode}.");
            await answer.Problem();
        }
    }

    // CWE-1236: what a spreadsheet would run goes out as text.
    [Fact]
    public async Task A_formula_that_somebody_typed_comes_out_as_text()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units", """{ "id": "u2", "tag": "=HYPERLINK(\"evil\")", "family": "brackenmere-4", "person": "@SUM(A1)", "customer": "+1+1" }""");
        var table = await http.GetStringAsync("/v1/units.csv");
        foreach (var cell in new[] { "'=HYPERLINK", "'@SUM", "'+1+1" })
            Assert.Contains(cell, table, StringComparison.Ordinal);
        Assert.DoesNotMatch("(^|[,\"\\n])[=@+]", table.Replace("\"\"", "", StringComparison.Ordinal));
    }

    private static async Task Refuses(HttpClient http, HttpMethod method, string path, string? body)
    {
        using var answer = await http.Send(method, path, body);
        Assert.True((int)answer.StatusCode is >= 400 and < 500, $"{method} {path}: {answer.StatusCode}");
    }

    private static Task<HttpResponseMessage> Send(HttpClient http, string path, byte[] body, string type, string encoding)
    {
        var content = new ByteArrayContent(body);
        content.Headers.ContentType = new(type);
        content.Headers.ContentEncoding.Add(encoding);
        return http.PostAsync(new Uri(path, UriKind.Relative), content);
    }

    private static byte[] Packed(string encoding, IEnumerable<string> parts)
    {
        using var packed = new MemoryStream();
        using (Stream packing = encoding == "br" ? new BrotliStream(packed, CompressionLevel.Optimal) : new GZipStream(packed, CompressionLevel.Optimal))
        {
            foreach (var part in parts)
                packing.Write(Encoding.UTF8.GetBytes(part));
        }

        return packed.ToArray();
    }
}
