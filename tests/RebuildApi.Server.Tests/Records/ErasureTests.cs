using System.Net;
using System.Text;
using Microsoft.Extensions.DependencyInjection;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.Storage;

namespace RebuildApi.Server.Tests.Records;

public sealed class ErasureTests
{
    private const string Name = "Ferry Lane Farm";
    private const string Ask = """{ "customer": "Ferry Lane Farm", "person": "Ada" }""";
    private static readonly byte[] Photo = [0xFF, 0xD8, 0xFF, 0xE0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

    // A unit of the customer's on its way out, with what tells of it in every place that there is.
    private static async Task<HttpClient> Filled(ShopServer server)
    {
        var http = await server.WithUnit();
        await http.Make("/v1/units", $$"""{ "id": "a1", "tag": "A-1", "family": "brackenmere-4", "person": "Ada", "customer": "{{Name}}", "words": "Whines in third, says Mr Farm." }""");
        await http.Bore("a1", "47.69");
        await http.Make("/v1/units/a1/decisions", $$"""{ "subject": "third-gear", "choice": "replace", "reason": "{{Name}} wants it so.", "person": "Ada", "bench": "b" }""");
        using var photo = await http.Send(HttpMethod.Post, $"/v1/units/a1/attachments?person=Ada&id=p1&note=At%20{Uri.EscapeDataString(Name)}", Photo, "image/jpeg", ("Idempotency-Key", "p"));
        Assert.True(photo.IsSuccessStatusCode, await photo.Content.ReadAsStringAsync());
        await http.Make("/v1/units/a1/stages", """{ "to": "returned-unrepaired", "person": "Ada", "note": "Too dear for Ferry Lane Farm." }""");
        return http;
    }

    [Fact]
    public async Task A_dry_run_lists_what_would_go_and_nothing_goes()
    {
        await using var server = ShopServer.Open();
        using var http = await Filled(server);
        var backup = await http.Make("/v1/backups", "{}");

        var said = await http.Make("/v1/customers/erasures?dryRun=true", """{ "customer": "Ferry Lane Farm", "person": "Ada", "files": true }""");

        var unit = Assert.Single(said["units"]!.AsArray())!;
        Assert.Equal(["unit", "decision", "attachment", "stage", "unit"], unit["entries"]!.AsArray().Select(e => (string)e!["kind"]!));
        Assert.Single(unit["files"]!.AsArray());
        var copy = Assert.Single(said["copies"]!.AsArray())!;
        Assert.Equal(((string)backup["id"]!, "It stays until a person removes it."), ((string)copy["name"]!, (string)copy["goes"]!));
        Assert.Equal(Name, (string)(await http.Read("/v1/units/a1"))["customer"]!);
        using var photo = await http.GetAsync("/v1/units/a1/attachments/p1");
        Assert.Equal(HttpStatusCode.OK, photo.StatusCode);
    }

    [Fact]
    public async Task What_names_a_customer_goes_from_every_address_and_every_file_and_the_chain_stays_whole()
    {
        await using var server = ShopServer.Open();
        using var http = await Filled(server);
        var head = (string)(await http.Read("/v1/audit/verification"))["head"]!;
        var tag = (await http.GetAsync("/v1/units/a1")).Headers.ETag!.Tag;

        await http.Make("/v1/customers/erasures", """{ "customer": "Ferry Lane Farm", "person": "Ada", "files": true }""");

        foreach (var address in new[] { "/v1/units", "/v1/units/a1", "/v1/units/a1/decisions", "/v1/units/a1/stages", "/v1/units/a1/attachments", "/v1/units/a1/judgements", "/v1/customers", "/v1/audit", "/v1/events?seconds=0&after=0", "/v1/units/a1/snapshot", "/units/a1" })
            Assert.DoesNotContain("Farm", await http.GetStringAsync(address), StringComparison.Ordinal);
        await EachEntryIsSilent(http);
        foreach (var file in Directory.GetFiles(server.DataFolder, "*", SearchOption.AllDirectories))
            Assert.False((await Letters(file)).Contains("Farm", StringComparison.Ordinal), file);
        using var again = await http.Send(HttpMethod.Get, "/v1/units/a1", null, ("If-None-Match", tag));
        Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        using var photo = await http.GetAsync("/v1/units/a1/attachments/p1");
        Assert.Equal("attachment-erased", (string)(await photo.Problem())["code"]!);
        using var export = await http.GetAsync("/v1/customers/export?customer=Ferry%20Lane%20Farm");
        Assert.Equal("unknown-customer", (string)(await export.Problem())["code"]!);
        var found = await http.Read("/v1/audit/verification?head=" + head);
        Assert.True((bool)found["intact"]!, (string?)found["why"]);
        Assert.Equal(("a1", "tests"), ((string)found["erasures"]![0]!["unit"]!, (string)found["erasures"]![0]!["actor"]!));
    }

    [Fact]
    public async Task A_request_that_is_repeated_is_known_again_and_its_answer_is_silent_too()
    {
        await using var server = ShopServer.Open();
        using var http = await Filled(server);
        var taken = $$"""{ "id": "a2", "tag": "A-2", "family": "brackenmere-4", "person": "Ada", "customer": "{{Name}}" }""";
        await http.Make("/v1/units", taken);
        await http.Make("/v1/units/a2/stages", """{ "to": "returned-unrepaired", "person": "Ada", "note": "Gone." }""");

        await http.Make("/v1/customers/erasures", Ask);
        var again = await http.Make("/v1/units", taken);

        Assert.Equal(("a2", Erasure.Text), ((string)again["id"]!, (string)again["customer"]!));
    }

    [Fact]
    public async Task An_erasure_that_is_repeated_by_its_key_is_answered_as_before()
    {
        await using var server = ShopServer.Open();
        using var http = await Filled(server);

        using var first = await http.Send(HttpMethod.Post, "/v1/customers/erasures", Ask, ("Idempotency-Key", "e1"));
        using var again = await http.Send(HttpMethod.Post, "/v1/customers/erasures", Ask, ("Idempotency-Key", "e1"));

        Assert.Equal((HttpStatusCode.Created, await first.Content.ReadAsStringAsync()), (again.StatusCode, await again.Content.ReadAsStringAsync()));
    }

    [Fact]
    public async Task A_unit_in_the_shop_stays_and_a_name_that_nobody_bears_is_said_so()
    {
        await using var server = ShopServer.Open();
        using var http = await Filled(server);
        await http.Make("/v1/units", $$"""{ "id": "a2", "tag": "A-2", "family": "brackenmere-4", "person": "Ada", "customer": "{{Name}}" }""");

        var said = await http.Make("/v1/customers/erasures", Ask);

        Assert.Equal(("a2", "in-the-shop"), ((string)said["kept"]![0]!["unit"]!, (string)said["kept"]![0]!["why"]!));
        Assert.Equal(Name, (string)(await http.Read("/v1/units/a2"))["customer"]!);
        using var nobody = await http.Send(HttpMethod.Post, "/v1/customers/erasures", """{ "customer": "Nobody", "person": "Ada" }""");
        Assert.Equal("unknown-customer", (string)(await nobody.Problem())["code"]!);
    }

    [Fact]
    public async Task An_invoiced_unit_goes_only_when_that_is_asked_for()
    {
        await using var server = ShopServer.Open();
        using var http = await Filled(server);
        await Invoice(server);

        var kept = await http.Make("/v1/customers/erasures", Ask);
        var erased = await http.Make("/v1/customers/erasures", """{ "customer": "Ferry Lane Farm", "person": "Ada", "invoiced": "erase" }""");

        Assert.Equal("invoiced", (string)Assert.Single(kept["kept"]!.AsArray())!["why"]!);
        Assert.Empty(kept["units"]!.AsArray());
        Assert.Single(erased["units"]!.AsArray());
        var feed = await http.Read("/v1/feeds/invoice-lines");
        Assert.Single(feed["items"]!.AsArray());
    }

    [FileFact]
    public async Task The_command_does_the_same_beside_a_service_that_runs()
    {
        await using var server = ShopServer.Open();
        using var http = await Filled(server);
        using var said = new StringWriter();

        Assert.Equal(0, await CommandLine.Run(["erase", Name, "--dry-run", "--data", server.DataFolder], said, said));
        Assert.Contains("would go a1: unit customer+words", said.ToString(), StringComparison.Ordinal);
        Assert.Equal(0, await CommandLine.Run(["erase", Name, "--files", "--person", "Ada", "--data", server.DataFolder], said, said));
        Assert.Equal(2, await CommandLine.Run(["erase", Name, "--data", server.DataFolder], said, said));
        Assert.Equal(0, await CommandLine.Run(["verify", "--data", server.DataFolder], said, said));

        Assert.Contains("by console, says entry", said.ToString(), StringComparison.Ordinal);
        Assert.Equal(Erasure.Text, (string)(await http.Read("/v1/units/a1"))["customer"]!);
    }

    private static async Task EachEntryIsSilent(HttpClient http)
    {
        foreach (var entry in (await http.Read("/v1/audit?limit=500"))["items"]!.AsArray())
            Assert.DoesNotContain("Farm", await http.GetStringAsync($"/v1/audit/{entry!["sequence"]}"), StringComparison.Ordinal);
    }

    // Past quotes and agreements, which are not what is looked at here.
    private static Task Invoice(ShopServer server) => server.Services.GetRequiredService<IStore>().Write(new WriteRequest("test", "test", null, "", DryRun: false), session =>
    {
        var what = new Needed("n1", "part", "Third gear", "required", 1, 1, "each", 100, 1, new Tax("usual", "S", 20), [], null, null, null);
        session.Put(new InvoiceLine("l1", "a1", "q1", null, what, 100, 20, "EUR", 2, null, "Ada", DateTimeOffset.UnixEpoch), 0);
        return StoredAnswer.Nothing;
    }, default);

    private static async Task<string> Letters(string file)
    {
        await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var reader = new StreamReader(stream, Encoding.Latin1);
        return await reader.ReadToEndAsync();
    }
}
