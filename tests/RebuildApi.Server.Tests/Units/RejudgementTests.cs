using System.Collections.Immutable;
using System.Net;
using System.Text.Json.Nodes;
using RebuildApi.Contracts;
using RebuildApi.PluginHost;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Units;

/// <summary>Old units under new rules: the shadow run says what would change and stores nothing; moving a unit is recorded with what it changed.</summary>
public sealed class RejudgementTests : IDisposable
{
    private const string Bore = "third-gear/bore";
    private readonly ShopServer _server = ShopServer.Open();

    [Fact]
    public async Task A_proposed_file_says_which_verdicts_would_change_and_stores_nothing()
    {
        var http = await WithBore();
        var yaml = ShippedPlugins.Catalog.WriteFile(Narrowed("1.1.0").Family);
        var before = await http.Read("/v1/units/u1");

        using var answer = await http.Send(HttpMethod.Post, "/v1/families/rejudgements", yaml, "application/yaml");
        var lines = await Lines(answer);

        var change = Assert.Single(lines, l => (string?)l["change"]?["subject"] == Bore);
        Assert.Equal(("conforming", "nonconforming"), ((string)change["change"]!["before"]!["outcome"]!, (string)change["change"]!["after"]!["outcome"]!));
        Assert.Equal("records", (string)change["basis"]!);
        Assert.NotEmpty(change["change"]!["after"]!["reasons"]!.AsArray());
        Assert.Equal((1, 1, 0), Summary(lines));
        Assert.Equal(before.ToJsonString(), (await http.Read("/v1/units/u1")).ToJsonString());
    }

    [Fact]
    public async Task The_rules_that_spoke_change_nothing()
    {
        var http = await WithBore();

        using var answer = await http.GetAsync($"/v1/families/{ShopServer.Family}/rejudgements");

        Assert.Equal((1, 0, 0), Summary(await Lines(answer)));
    }

    [Fact]
    public async Task Where_the_old_edition_is_gone_the_judgement_that_was_relied_on_is_compared()
    {
        var http = await WithBore();
        await http.Make("/v1/units/u1/decisions", $$"""{ "subject": "{{Bore}}", "choice": "reuse", "reason": "Within.", "person": "Ada", "bench": "bench-1" }""");
        _server.LoadNewer(Narrowed("1.1.0"));

        using var answer = await http.GetAsync($"/v1/families/{ShopServer.Family}/rejudgements");
        var change = Assert.Single(await Lines(answer), l => (string?)l["change"]?["subject"] == Bore);

        Assert.StartsWith("j", (string)change["basis"]!, StringComparison.Ordinal);
        Assert.Equal(("conforming", "nonconforming"), ((string)change["change"]!["before"]!["outcome"]!, (string)change["change"]!["after"]!["outcome"]!));
    }

    [Fact]
    public async Task A_unit_of_which_nothing_was_kept_says_why_it_is_not_compared()
    {
        var http = await WithBore();
        _server.LoadNewer(Narrowed("1.1.0"));

        using var answer = await http.GetAsync($"/v1/families/{ShopServer.Family}/rejudgements");
        var lines = await Lines(answer);

        Assert.Contains("pinned to brackenmere-4 1.0.0", (string)lines[0]["notCompared"]!, StringComparison.Ordinal);
        Assert.Equal((1, 0, 1), Summary(lines));
    }

    [Fact]
    public async Task A_file_with_an_error_is_refused_with_its_line()
    {
        var http = await WithBore();

        using var answer = await http.Send(HttpMethod.Post, "/v1/families/rejudgements", "family: x\n"u8.ToArray(), "application/yaml");
        var problem = await answer.Problem();

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("family.yaml:", (string)problem["errors"]![0]!["message"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Moving_a_unit_is_recorded_and_says_what_it_changed()
    {
        var http = await WithBore();
        await http.Make("/v1/units/u1/decisions", $$"""{ "subject": "{{Bore}}", "choice": "reuse", "reason": "Within.", "person": "Ada", "bench": "bench-1" }""");
        _server.LoadNewer(Narrowed("1.1.0"));

        var moved = await http.Make("/v1/units/u1/edition-moves", Move);
        var again = await http.Make("/v1/units/u1/edition-moves", Move);

        Assert.Equal(moved.ToJsonString(), again.ToJsonString());
        Assert.Equal(("1.0.0", "1.1.0"), ((string)moved["from"]!["version"]!, (string)moved["to"]!["version"]!));
        Assert.Contains(Bore, moved["changes"]!.AsArray().Select(c => (string)c!["subject"]!));
        Assert.Equal("1.1.0", (string)(await http.Read("/v1/units/u1"))["family"]!["version"]!);
        var decision = (await http.Read("/v1/units/u1/decisions"))["items"]!.AsArray().Single(d => (string)d!["id"]! == (string)moved["decision"]!);
        Assert.Equal(("move-edition", "Ada"), ((string)decision!["choice"]!, (string)decision["person"]!));
        Assert.EndsWith("The maker's corrected bore.", (string)decision["reason"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_unit_that_is_at_the_loaded_edition_is_not_moved()
    {
        var http = await WithBore();

        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/edition-moves", Move, ("Idempotency-Key", "k1"));

        Assert.Contains("1.0.0", (string)(await answer.Problem())["detail"]!, StringComparison.Ordinal);
    }

    public void Dispose() => _server.Dispose();

    private const string Move = """{ "person": "Ada", "bench": "bench-1", "reason": "The maker's corrected bore." }""";

    /// <summary>The shipped family with a bore of third gear that no reading of these tests meets.</summary>
    private static LoadedFamily Narrowed(string version)
    {
        var shipped = ShippedPlugins.Catalog.Find(ShopServer.Family)!;
        var kinds = shipped.Family.Kinds.Select(k => k.Id != "third-gear" ? k : k with { Characteristics = [.. k.Characteristics.Select(Narrow)] });
        return new(shipped.Family with { Version = new FamilyVersion(ShopServer.Family, version), Kinds = [.. kinds], Golden = [] }, shipped.Supplier with { Version = version });
    }

    private static Characteristic Narrow(Characteristic c) =>
        c.Id == "bore" ? c with { Service = Limits.Between(Length.Inches(1.8772m), Length.Inches(1.8773m), c.Service!.Source), New = null } : c;

    private async Task<HttpClient> WithBore()
    {
        var http = await _server.WithUnit();
        var part = await http.Make("/v1/units/u1/components", """{ "position": "third-gear" }""");
        var id = (string?)part["id"] ?? (string)part["component"]!;
        await http.Make("/v1/units/u1/measurements", $$"""
            { "person": "Ada", "bench": "bench-1", "measurements": [{ "component": "{{id}}", "characteristic": "bore", "instrument": "mic-25",
              "readings": [{ "value": 1.8780, "unit": "in" }, { "value": 1.8780, "unit": "in" }, { "value": 1.8780, "unit": "in" }] }] }
            """);
        return http;
    }

    private static async Task<List<JsonObject>> Lines(HttpResponseMessage answer)
    {
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, text);
        return [.. text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonNode.Parse(l)!.AsObject())];
    }

    private static (int Units, int Changed, int NotCompared) Summary(List<JsonObject> lines) =>
        lines[^1]["summary"] is { } s ? ((int)s["units"]!, (int)s["changed"]!, (int)s["notCompared"]!) : default;
}
