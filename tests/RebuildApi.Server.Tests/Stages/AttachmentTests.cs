using System.Net;
using System.Security.Cryptography;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Stages;

public sealed class AttachmentTests
{
    // Signatures: JPEG (ISO/IEC 10918-1), PNG (W3C PNG, 5.2), WebP (RFC 9649), HEIC (ISO/IEC 23008-12), PDF (ISO 32000-2); from memory.
    private static readonly byte[] s_jpeg = [0xFF, 0xD8, 0xFF, 0xE0, 0, 16, .. "JFIF"u8, 0, 1, 2, 3];
    private static readonly byte[] s_png = [0x89, .. "PNG\r\n\x1A\n"u8, 0, 0, 0, 13, .. "IHDR"u8, 0, 0, 0, 1];
    private static readonly byte[] s_webp = [.. "RIFF"u8, 4, 0, 0, 0, .. "WEBPVP8 "u8];
    private static readonly byte[] s_heic = [0, 0, 0, 24, .. "ftypheic"u8, 0, 0, 0, 0];
    private static readonly byte[] s_pdf = [.. "%PDF-1.7\n"u8, 1, 2];

    [Fact]
    public async Task Every_sort_comes_back_byte_for_byte_as_its_own_type_and_only_pictures_are_shown()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        foreach (var (type, content, shown) in new[] { ("image/jpeg", s_jpeg, true), ("image/png", s_png, true), ("image/webp", s_webp, true), ("image/heic", s_heic, false), ("application/pdf", s_pdf, false) })
        {
            var kept = await Add(http, content, type);
            using var answer = await http.GetAsync(new Uri((string)kept["href"]!, UriKind.Relative));
            Assert.Equal(content, await answer.Content.ReadAsByteArrayAsync());
            Assert.Equal((type, shown ? "inline" : "attachment"), (answer.Content.Headers.ContentType!.MediaType, answer.Content.Headers.ContentDisposition!.DispositionType));
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
            Assert.Contains("sandbox", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
            using var same = await http.Send(HttpMethod.Get, (string)kept["href"]!, null, ("If-None-Match", answer.Headers.ETag!.ToString()));
            Assert.Equal((HttpStatusCode.NotModified, 0), (same.StatusCode, (await same.Content.ReadAsByteArrayAsync()).Length));
        }
    }

    [Fact]
    public async Task The_content_says_what_a_file_is_and_nothing_else_does()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        foreach (var (content, type) in new[] { ("<script>alert(1)</script>"u8.ToArray(), "image/jpeg"), (s_png, "image/jpeg"), ("<svg/>"u8.ToArray(), "image/png"), (Array.Empty<byte>(), "application/pdf") })
        {
            using var answer = await Send(http, content, type);
            Assert.Equal("invalid-content", (string)(await answer.Problem())["code"]!);
        }

        using var other = await Send(http, "<svg/>"u8.ToArray(), "image/svg+xml");
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, other.StatusCode);
        Assert.False(Directory.Exists(Path.Combine(server.DataFolder, "attachments")));
    }

    [Fact]
    public async Task Sizes_are_limited_for_a_file_and_for_a_unit_by_settings()
    {
        await using var server = ShopServer.Open().With("Rebuild:AttachmentBytes", "40").With("Rebuild:AttachmentBytesPerUnit", "50");
        using var http = await server.WithUnit();
        using var large = await Send(http, [.. s_jpeg, .. new byte[40]], "image/jpeg");
        await Add(http, [.. s_jpeg, .. new byte[20]], "image/jpeg");
        using var full = await Send(http, [.. s_jpeg, .. new byte[21]], "image/jpeg");
        Assert.Equal(["body-too-large", "body-too-large"], new[] { (string)(await large.Problem())["code"]!, (string)(await full.Problem())["code"]! });
        Assert.Single((await http.Read("/v1/units/u1/attachments"))["items"]!.AsArray());
    }

    [Fact]
    public async Task A_file_that_is_changed_or_gone_is_told_and_the_record_stands()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var kept = await Add(http, s_jpeg, "image/jpeg");
        var name = Convert.ToHexStringLower(SHA256.HashData(s_jpeg));
        var file = Path.Combine(server.DataFolder, "attachments", name);
        Assert.Equal([file], Directory.GetFiles(Path.GetDirectoryName(file)!));
        await File.WriteAllBytesAsync(file, [.. s_jpeg[..^1], 9]);
        using var changed = await http.GetAsync(new Uri((string)kept["href"]!, UriKind.Relative));
        Assert.Equal((HttpStatusCode.Gone, "attachment-lost"), (changed.StatusCode, (string)(await changed.Problem())["code"]!));
        File.Delete(file);
        var listed = Assert.Single((await http.Read("/v1/units/u1/attachments"))["items"]!.AsArray())!;
        Assert.Equal((name, false), ((string)listed["sha256"]!, (bool)listed["there"]!));
        await Add(http, s_jpeg, "image/jpeg", "&note=again");
        using var whole = await http.GetAsync(new Uri((string)kept["href"]!, UriKind.Relative));
        Assert.Equal(HttpStatusCode.OK, whole.StatusCode);
    }

    [Fact]
    public async Task A_photo_shows_a_finding_that_is_there_and_belongs_to_its_unit_alone()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units/u1/findings", """{ "person": "Ada", "bench": "b", "findings": [{ "id": "f1", "position": "third-gear", "sound": true }] }""");
        var kept = await Add(http, s_jpeg, "image/jpeg", "&finding=f1&note=The%20flank");
        Assert.Equal(("f1", "The flank", "Ada"), ((string)kept["finding"]!, (string)kept["note"]!, (string)kept["person"]!));
        using var wrong = await Send(http, s_jpeg, "image/jpeg", "&finding=f2");
        Assert.Equal("query/finding", (string)(await wrong.Problem())["errors"]![0]!["pointer"]!);
        await http.Make("/v1/units", $$"""{ "id": "u2", "tag": "T-2", "family": "{{ShopServer.Family}}", "person": "Ada" }""");
        using var elsewhere = await http.GetAsync(new Uri($"/v1/units/u2/attachments/{kept["id"]}", UriKind.Relative));
        Assert.Equal("unknown-attachment", (string)(await elsewhere.Problem())["code"]!);
    }

    [Fact]
    public async Task A_dry_run_leaves_no_file_and_a_repeated_key_no_second_record()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var dry = await Send(http, s_jpeg, "image/jpeg", "&dryRun=true");
        Assert.Equal(HttpStatusCode.Created, dry.StatusCode);
        Assert.False(Directory.Exists(Path.Combine(server.DataFolder, "attachments")));
        using var once = await Send(http, s_jpeg, "image/jpeg", "", ("Idempotency-Key", "k"));
        using var twice = await Send(http, s_jpeg, "image/jpeg", "", ("Idempotency-Key", "k"));
        Assert.Equal(await once.Content.ReadAsStringAsync(), await twice.Content.ReadAsStringAsync());
        Assert.Single((await http.Read("/v1/units/u1/attachments"))["items"]!.AsArray());
    }

    private static Task<HttpResponseMessage> Send(HttpClient http, byte[] content, string type, string more = "", params (string, string)[] headers) =>
        http.Send(HttpMethod.Post, "/v1/units/u1/attachments?person=Ada" + more, content, type, headers);

    private static async Task<JsonObject> Add(HttpClient http, byte[] content, string type, string more = "")
    {
        using var answer = await Send(http, content, type, more);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, text);
        return JsonNode.Parse(text)!.AsObject();
    }
}
