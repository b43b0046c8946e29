using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Checks;

/// <summary>Values checked by the row: in order, with faults in place, however they come.</summary>
public sealed class CheckTests
{
    private const string Rows = """
        {"family":"brackenmere-4","at":"third-gear/bore","value":1.8776,"unit":"in","uncertainty":0.0001,"id":"good"}
        {"family":"brackenmere-4","at":"third-gear/bore","value":1.9000,"unit":"in","uncertainty":0.0001,"id":"worn"}

        {"family":"brackenmere-4","at":"third-gear/boar","value":1.8776,"unit":"in"}
        {"family":"brackenmere-4","at":"third-gear/bore","value":1.8776,"unit":"N"}
        {"family":"brackenmere-4","at":"third-gear/bore","value":1.8776}
        {"family":"brackenmere-4","at":"third-gear/bore","value":"1.8776","unit":"in"}
        {"family":"brackenmere-4","at":"third-gear/bore","value":1.87760001,"unit":"in"}
        {"family":"brackenmere-4","at":"third-gear/bore","value":1.8776,"unit":"in","instrument":"mic-26"}
        {"family":"brackenmere-4","at":"third-gear/bore","valu":1.8776,"unit":"in"}
        not json
        {"family":"brackenmere-4","at":"third-gear/bore","value":1.8776e0,"unit":"in","instrument":"mic-25"}
        """;

    [Fact]
    public async Task Rows_come_back_in_order_with_each_fault_in_its_place_and_the_count_last()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();

        var lines = await Check(http, Rows);

        Assert.Equal(
            ["conforming", "nonconforming", "unknown-subject", "wrong-dimension", "bare-number", "wrong-type", "too-many-digits", "unknown-instrument", "unknown-field", "malformed-json", "conforming"],
            lines[..^1].Select(l => (string?)l["outcome"] ?? (string)l["error"]!["code"]!));
        Assert.Equal([1, 2, 4, 5, 6, 7, 8, 9, 10, 11, 12], lines[..^1].Select(l => (int)l["row"]!));
        Assert.Equal("Did you mean third-gear/bore?", (string)lines[2]["error"]!["allowed"]!);
        Assert.Equal("worn", (string)lines[1]["id"]!);
        Assert.Equal((true, true, 11, 2, 1, 0, 8), (
            (bool)lines[^1]["end"]!, (bool)lines[^1]["complete"]!, (int)lines[^1]["rows"]!, (int)lines[^1]["conforming"]!, (int)lines[^1]["nonconforming"]!,
            (int)lines[^1]["inconclusive"]!, (int)lines[^1]["errors"]!));
    }

    [Theory]
    [InlineData(',')]
    [InlineData(';')]
    [InlineData('\t')]
    public async Task A_table_is_read_with_the_separator_that_its_first_line_has(char separator)
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var table = "at,value,unit,id\r\nthird-gear/bore,1.8776,in,\"a \"\"quoted\"\" one\"\r\nthird-gear/bore,47.69,in,=1+1\r\n".Replace(',', separator);

        using var answer = await http.Send(HttpMethod.Post, "/v1/checks?family=brackenmere-4", Encoding.UTF8.GetBytes(table), "text/csv");
        var lines = (await answer.Content.ReadAsStringAsync()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);

        Assert.Equal("row,id,at,outcome,probability,margin,unit,error,field,got,allowed", lines[0]);
        Assert.StartsWith("2,\"a \"\"quoted\"\" one\",third-gear/bore,conforming,", lines[1], StringComparison.Ordinal);
        Assert.StartsWith("3,'=1+1,third-gear/bore,nonconforming,0,", lines[2], StringComparison.Ordinal);
        Assert.StartsWith("#end,2,complete,", lines[3], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("at,value\nx,1\n", "missing-field")]
    [InlineData("at,value,unit,colour\n", "unknown-field")]
    [InlineData("at,value,unit,at\n", "duplicate-field")]
    [InlineData("", "missing-field")]
    public async Task A_table_without_a_right_first_line_says_so_and_judges_nothing(string table, string code)
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();

        using var answer = await http.Send(HttpMethod.Post, "/v1/checks", Encoding.UTF8.GetBytes(table), "text/csv", ("Accept", "application/x-ndjson"));
        var last = Assert.Single(Lines(await answer.Content.ReadAsStringAsync()));

        Assert.Equal((false, 0, code), ((bool)last["complete"]!, (int)last["rows"]!, (string)last["error"]!["code"]!));
    }

    [Theory]
    [InlineData("gzip")]
    [InlineData("br")]
    public async Task Rows_may_come_and_go_compressed(string encoding)
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var plain = await Check(http, Rows);

        using var answer = await SendPacked(http, Pack(Rows, encoding), encoding);

        Assert.Equal([encoding], answer.Content.Headers.ContentEncoding);
        Assert.Equal(plain.Select(l => l.ToJsonString()), Lines(Unpack(await answer.Content.ReadAsByteArrayAsync(), encoding)).Select(l => l.ToJsonString()));
    }

    [Fact]
    public async Task Rows_that_are_not_compressed_as_they_say_end_the_answer_in_words()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();

        using var answer = await SendPacked(http, Encoding.UTF8.GetBytes(Rows), "gzip");
        var last = Lines(Unpack(await answer.Content.ReadAsByteArrayAsync(), "gzip"))[^1];

        Assert.Equal((false, "bad-request"), ((bool)last["complete"]!, (string)last["error"]!["code"]!));
    }

    [Fact]
    public async Task A_hundred_thousand_rows_keep_their_order()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var rows = string.Join('\n', Enumerable.Range(1, 100_000).Select(i => $$"""{"at":"third-gear/bore","value":1.{{8700 + (i % 200)}},"unit":"in","id":"{{i}}"}"""));

        using var answer = await http.Send(HttpMethod.Post, "/v1/checks?family=brackenmere-4", Encoding.UTF8.GetBytes(rows), "application/x-ndjson");
        var lines = Lines(await answer.Content.ReadAsStringAsync());

        Assert.Equal(Enumerable.Range(1, 100_000), lines[..^1].Select(l => int.Parse((string)l["id"]!, System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Equal(100_000, (int)lines[^1]["rows"]!);
    }

    [Fact]
    public async Task A_line_without_end_is_refused_after_its_first_part()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();

        using var answer = await http.Send(HttpMethod.Post, "/v1/checks", Encoding.UTF8.GetBytes(Rows.Split('\n')[0] + "\n" + new string('0', 1 << 18)), "application/x-ndjson");
        var lines = Lines(await answer.Content.ReadAsStringAsync());

        Assert.Equal(("conforming", 1, false, "row-too-long"), (
            (string)lines[0]["outcome"]!, (int)lines[^1]["rows"]!, (bool)lines[^1]["complete"]!, (string)lines[^1]["error"]!["code"]!));
    }

    [Theory]
    [InlineData("value=1.8776&unit=in", "conforming")]
    [InlineData("value=47.69&unit=mm&show=outcome", "conforming")]
    [InlineData("value=1.9&unit=in&uncertainty=0.0001", "nonconforming")]
    [InlineData("value=1.9&unit=in&uncertainty=0.0001&show=probability", "0")]
    public async Task One_value_answers_one_word_for_a_cell(string query, string word)
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();

        using var answer = await http.GetAsync(new Uri("/v1/checks/one?family=brackenmere-4&at=third-gear/bore&" + query, UriKind.Relative));

        Assert.Equal(word, await answer.Content.ReadAsStringAsync());
        Assert.Equal("text/plain", answer.Content.Headers.ContentType?.MediaType);
    }

    [Theory]
    [InlineData("value=1.8776&unit=bananas", "unit")]
    [InlineData("value=many&unit=in", "value")]
    [InlineData("value=1&unit=in&instrument=none", "instrument")]
    public async Task One_value_that_is_wrong_is_a_problem_that_names_the_field(string query, string field)
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();

        using var answer = await http.GetAsync(new Uri("/v1/checks/one?family=brackenmere-4&at=third-gear/bore&" + query, UriKind.Relative));

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("query/" + field, (string)(await answer.Problem())["errors"]![0]!["pointer"]!);
    }

    [Fact]
    public async Task The_snapshot_of_a_unit_sent_back_gives_the_judgement_of_the_unit_and_a_changed_one_another()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units/u1/measurements", """
            { "person": "Ada", "bench": "b", "measurements": [{ "at": "third-gear/bore", "instrument": "mic-25", "readings": [{ "value": 47.69, "unit": "mm" }, { "value": 47.691, "unit": "mm" }, { "value": 47.69, "unit": "mm" }] }] }
            """);
        var snapshot = await http.GetStringAsync(new Uri("/v1/units/u1/snapshot", UriKind.Relative));
        var verdicts = await http.Read("/v1/units/u1/verdicts?limit=500");

        using var answer = await http.Send(HttpMethod.Post, "/v1/judgements",
            Encoding.UTF8.GetBytes(snapshot + "\n" + snapshot.Replace("47691000", "49691000", StringComparison.Ordinal) + "\n{}\n" + snapshot.Replace("third-gear\"", "fourth-wheel\"", StringComparison.Ordinal)), "application/x-ndjson");
        var lines = Lines(await answer.Content.ReadAsStringAsync());

        Assert.Equal(verdicts["items"]!.ToJsonString(), lines[0]["judgement"]!["parts"]!.ToJsonString());
        Assert.Contains(lines[1]["judgement"]!["parts"]!.AsArray(), p => (string)p!["subject"]! == "third-gear" && (string)p["outcome"]! == "nonconforming");
        Assert.Equal(["malformed-json", "not-allowed"], lines[2..4].Select(l => (string)l["error"]!["code"]!));
        Assert.Equal(4, (int)lines[^1]["rows"]!);
    }

    private static async Task<JsonObject[]> Check(HttpClient http, string rows)
    {
        using var answer = await http.Send(HttpMethod.Post, "/v1/checks", Encoding.UTF8.GetBytes(rows), "application/x-ndjson");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return Lines(await answer.Content.ReadAsStringAsync());
    }

    private static async Task<HttpResponseMessage> SendPacked(HttpClient http, byte[] rows, string encoding)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("/v1/checks", UriKind.Relative)) { Content = new ByteArrayContent(rows) };
        request.Content.Headers.ContentType = new("application/x-ndjson");
        request.Content.Headers.ContentEncoding.Add(encoding);
        request.Headers.AcceptEncoding.ParseAdd(encoding);
        return await http.SendAsync(request);
    }

    private static JsonObject[] Lines(string text) => [.. text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!.AsObject())];

    private static byte[] Pack(string text, string encoding)
    {
        using var packed = new MemoryStream();
        using (Stream stream = encoding == "br" ? new BrotliStream(packed, CompressionLevel.Fastest, true) : new GZipStream(packed, CompressionLevel.Fastest, true))
            stream.Write(Encoding.UTF8.GetBytes(text));
        return packed.ToArray();
    }

    private static string Unpack(byte[] packed, string encoding)
    {
        using var bytes = new MemoryStream(packed);
        using Stream stream = encoding == "br" ? new BrotliStream(bytes, CompressionMode.Decompress) : new GZipStream(bytes, CompressionMode.Decompress);
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
