using System.Buffers.Binary;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Records;

public sealed class AuditTests
{
    [Fact]
    public async Task Every_change_is_in_the_trail_with_who_when_and_what()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Bore("u1", "1.8776");

        var entries = (await http.Read("/v1/audit"))["items"]!.AsArray();

        Assert.Equal(["token", "settings", "instrument", "webhook", "unit", "component", "placement", "measurement"], entries.Select(e => (string)e!["kind"]!));
        var reading = entries[^1]!;
        Assert.Equal(("tests", "POST /v1/units/u1/measurements", "u1"), ((string)reading["actor"]!, (string)reading["operation"]!, (string)reading["unit"]!));
        Assert.Equal(Enumerable.Range(1, 8).Select(n => (long)n), entries.Select(e => (long)e!["sequence"]!));
        Assert.Single((await http.Read("/v1/audit?kind=measurement&unit=u1"))["items"]!.AsArray());
    }

    /// <summary>SHA-256 is FIPS 180-4; the order of the fields and the lengths before them are as the entry's own page says.</summary>
    [Fact]
    public async Task Anybody_can_work_the_hash_of_an_entry_out_again()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var record = await http.Read("/v1/audit/3");
        var entry = record["entry"]!;
        string[] fields =
        [
            (string)record["shop"]!, "3", (string)record["stamp"]!, (string)entry["actor"]!, (string)entry["operation"]!, (string)entry["kind"]!,
            (string?)entry["unit"] ?? "", (string)entry["id"]!, (string)record["body"]!, (string)record["previous"]!, ((long)record["form"]!).ToString(System.Globalization.CultureInfo.InvariantCulture),
        ];
        var bytes = fields.Select(Encoding.UTF8.GetBytes).SelectMany(f => Length(f.Length).Concat(f)).ToArray();

        Assert.Equal((string)entry["hash"]!, Convert.ToHexStringLower(SHA256.HashData(bytes)));
        Assert.Equal((string)(await http.Read("/v1/audit/2"))["entry"]!["hash"]!, (string)record["previous"]!);
        using var none = await http.GetAsync("/v1/audit/99999");
        Assert.Equal("unknown-entry", (string)(await none.Problem())["code"]!);
    }

    [Fact]
    public async Task Verification_gives_the_head_to_note_and_knows_a_noted_one_again()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var before = await http.Read("/v1/audit/verification");
        await http.Bore("u1", "1.8776");

        var after = await http.Read($"/v1/audit/verification?head={before["head"]}");
        var strange = await http.Read($"/v1/audit/verification?head={new string('a', 64)}");
        using var wrong = await http.GetAsync("/v1/audit/verification?head=abc");

        Assert.True((bool)after["intact"]!);
        Assert.Equal((long)before["entries"]!, (long)after["notedAt"]!);
        Assert.NotEqual((string)before["head"]!, (string)after["head"]!);
        Assert.False((bool)strange["intact"]!);
        Assert.Contains("noted head", (string)strange["why"]!, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, wrong.StatusCode);
    }

    [Fact]
    public async Task Tampering_is_named_by_its_first_entry()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Bore("u1", "1.8776");
        server.Meddle("DROP TRIGGER entry_is_not_changed; UPDATE entry SET body = replace(body, '1.8776', '1.8780') WHERE kind = 'measurement'");

        var found = await http.Read("/v1/audit/verification");

        Assert.False((bool)found["intact"]!);
        Assert.Equal(8, (long)found["firstBroken"]!);
        Assert.Equal("it was changed after it was written", (string)found["why"]!);
    }

    [Fact]
    public async Task An_approval_of_a_plug_in_is_on_record_even_when_what_lies_there_is_not_what_was_approved()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var sha = new string('0', 64);
        using var refused = await http.Send(HttpMethod.Post, "/v1/plugins/brackenmere-4/approvals", $$"""{ "sha256": "{{sha}}", "person": "Ada" }""");
        using var tried = await http.Send(HttpMethod.Post, "/v1/plugins/brackenmere-4/approvals?dryRun=true", $$"""{ "sha256": "{{sha}}", "person": "Ada" }""");
        using var reloaded = await http.Send(HttpMethod.Post, "/v1/plugins/brackenmere-4/reloads", "{}");

        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        var approvals = (await http.Read("/v1/audit?kind=plugin-approval"))["items"]!.AsArray();
        var body = (await http.Read($"/v1/audit/{Assert.Single(approvals)!["sequence"]}"))["record"]!;
        Assert.Equal(("brackenmere-4", "Ada", sha), ((string)body["subject"]!, (string)body["person"]!, (string)body["details"]!["sha256"]!));
        Assert.Equal("loaded", (string)(await OnlyRecord(http, "plugin-reload"))["details"]!["state"]!);
    }

    [Fact]
    public async Task A_start_with_other_settings_is_on_record()
    {
        await using var server = ShopServer.Open().With("Rebuild:RequestSeconds", "61");
        using var http = server.CreateClient();

        var details = (await OnlyRecord(http, "settings"))["details"]!;

        Assert.Equal("61", (string)details["RequestSeconds"]!);
        Assert.Equal("localhost, 127.0.0.1, [::1]", (string)details["Hosts"]!);
    }

    private static async Task<JsonNode> OnlyRecord(HttpClient http, string kind)
    {
        var entry = Assert.Single((await http.Read("/v1/audit?kind=" + kind))["items"]!.AsArray());
        return (await http.Read($"/v1/audit/{entry!["sequence"]}"))["record"]!;
    }

    private static byte[] Length(int length)
    {
        var bytes = new byte[8];
        BinaryPrimitives.WriteInt64BigEndian(bytes, length);
        return bytes;
    }
}
