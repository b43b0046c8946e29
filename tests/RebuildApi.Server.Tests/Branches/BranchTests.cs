using System.Net;
using System.Text.Json.Nodes;
using RebuildApi.Server.Access;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Branches;

/// <summary>Shops that share a database and open something to each other, over HTTP.</summary>
public sealed class BranchTests
{
    private static readonly string[] Addresses = ["/v1/shops/quay/opened/stock", "/v1/shops/quay/opened/stock.csv", "/v1/shops/quay/opened/units", "/v1/shops/quay/opened/units.ndjson", "/v1/shops/quay/opened/units/u1"];

    private static readonly string[] Kept = ["Ferry Lane", "Mr Invented", "Ada", "4500", "north wall"];

    private static async Task<TwoShops> Filled()
    {
        var shops = new TwoShops();
        await shops.Quay.Make("/v1/stock", """
            { "id": "shelf-17", "family": "brackenmere-4", "kind": "third-gear", "count": 2, "price": { "minor": 4500, "currency": "XXX" }, "person": "Ada", "origin": "core", "bin": "north wall",
              "inspected": true, "readings": [] }
            """);
        await shops.Quay.Make("/v1/units", """
            { "id": "u1", "tag": "SL-1", "family": "brackenmere-4", "person": "Ada", "customer": "Ferry Lane Farm", "words": "Jumps out of third for Mr Invented." }
            """);
        return shops;
    }

    private static Task<JsonObject> Open(TwoShops shops, string what) =>
        shops.Quay.Make("/v1/sharings", $$"""{ "shop": "harbour", "opens": [{{what}}], "person": "Ada" }""");

    private static async Task<(HttpStatusCode Status, string Code, string Detail)> Refusal(HttpClient http, string address)
    {
        using var answer = await http.GetAsync(address);
        var problem = await answer.Problem();
        return (answer.StatusCode, (string)problem["code"]!, (string)problem["detail"]!);
    }

    [Fact]
    public async Task What_is_opened_is_read_under_the_name_of_the_shop_that_opened_it()
    {
        await using var shops = await Filled();
        await Open(shops, "\"stock\", \"units\"");

        var who = (await shops.Harbour.Read("/v1/shops"))["items"]!.AsArray().Single()!;
        var stock = (await shops.Harbour.Read("/v1/shops/quay/opened/stock?kind=brackenmere-4/third-gear"))["items"]!.AsArray().Single()!;
        var unit = (await shops.Harbour.Read("/v1/shops/quay/opened/units/u1"))["unit"]!;

        Assert.Equal("""{"shop":"quay","opens":["stock","units"]}""", who.ToJsonString());
        Assert.Equal(("quay", "shelf-17", 2), ((string)stock["shop"]!, (string)stock["id"]!, (int)stock["free"]!));
        Assert.Equal(("quay", "u1", "SL-1"), ((string)unit["shop"]!, (string)unit["id"]!, (string)unit["tag"]!));
        Assert.Empty((await shops.Quay.Read("/v1/shops"))["items"]!.AsArray());
    }

    [Fact]
    public async Task Prices_bins_and_whatever_names_a_customer_are_in_none_of_it()
    {
        await using var shops = await Filled();
        await Open(shops, "\"stock\", \"units\"");

        foreach (var address in Addresses)
        {
            var text = await shops.Harbour.GetStringAsync(address);
            Assert.Contains("quay", text, StringComparison.Ordinal);
            Assert.All(Kept, secret => Assert.DoesNotContain(secret, text, StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task A_shop_that_opened_nothing_answers_like_one_that_is_not_there()
    {
        await using var shops = await Filled();

        foreach (var address in Addresses)
        {
            var closed = await Refusal(shops.Harbour, address);
            var nowhere = await Refusal(shops.Harbour, address.Replace("quay", "nowhere", StringComparison.Ordinal));
            Assert.Equal((HttpStatusCode.NotFound, "unknown-shop"), (closed.Status, closed.Code));
            Assert.Equal(nowhere, closed with { Detail = closed.Detail.Replace("quay", "nowhere", StringComparison.Ordinal) });
        }

        Assert.Empty((await shops.Harbour.Read("/v1/shops"))["items"]!.AsArray());
    }

    [Fact]
    public async Task What_was_not_opened_stays_closed_and_what_is_taken_back_is_closed_at_once()
    {
        await using var shops = await Filled();
        await Open(shops, "\"stock\"");
        Assert.Equal("unknown-shop", (await Refusal(shops.Harbour, "/v1/shops/quay/opened/units/u1")).Code);
        Assert.Single((await shops.Harbour.Read("/v1/shops/quay/opened/stock"))["items"]!.AsArray());

        await shops.Quay.Make("/v1/sharings/harbour/revocations", """{ "person": "Bea" }""");

        Assert.Equal("unknown-shop", (await Refusal(shops.Harbour, "/v1/shops/quay/opened/stock")).Code);
        var listed = (await shops.Quay.Read("/v1/sharings"))["items"]!.AsArray().Single()!;
        Assert.Equal(("harbour", "Bea", 0), ((string)listed["shop"]!, (string)listed["person"]!, listed["opens"]!.AsArray().Count));
        var chain = (await shops.Quay.Read("/v1/audit?kind=sharing"))["items"]!.AsArray();
        Assert.All(chain, entry => Assert.Equal(("tests", "harbour"), ((string)entry!["actor"]!, (string)entry["id"]!)));
        Assert.Equal(2, chain.Count);
        Assert.True((bool)(await shops.Quay.Read("/v1/audit/verification"))["intact"]!);
    }

    [Fact]
    public async Task Nothing_of_another_shop_can_be_written()
    {
        await using var shops = await Filled();
        await Open(shops, "\"stock\", \"units\"");

        foreach (var address in Addresses.Append("/v1/shops").Append("/v1/shops/quay"))
        {
            foreach (var method in new[] { HttpMethod.Post, HttpMethod.Put, HttpMethod.Patch, HttpMethod.Delete })
            {
                using var answer = await shops.Harbour.Send(method, address, "{}", ("Idempotency-Key", "k"), ("If-Match", "*"));
                Assert.True(answer.StatusCode is HttpStatusCode.MethodNotAllowed or HttpStatusCode.NotFound, $"{method} {address}: {answer.StatusCode}");
            }
        }

        using var own = await shops.Harbour.Send(HttpMethod.Patch, "/v1/stock/shelf-17", """{ "count": 0 }""", ("If-Match", "*"), ("Idempotency-Key", "k"));
        Assert.Equal(HttpStatusCode.NotFound, own.StatusCode);
        Assert.Equal(2, (int)(await shops.Quay.Read("/v1/stock/shelf-17"))["count"]!);
    }

    [Fact]
    public async Task Only_an_administrator_opens_and_never_to_the_own_shop_nor_what_there_is_not()
    {
        await using var shops = await Filled();
        using var office = await shops.ClientOfQuay(Scope.Office);
        foreach (var (body, code) in new[]
        {
            ("""{ "shop": "quay", "opens": ["stock"], "person": "Ada" }""", "invalid-content"),
            ("""{ "shop": "harbour", "opens": [], "person": "Ada" }""", "invalid-body"),
            ("""{ "shop": "harbour", "opens": ["customers"], "person": "Ada" }""", "invalid-body"),
            ("""{ "shop": "%", "opens": ["stock"], "person": "Ada" }""", "invalid-body"),
        })
        {
            using var refused = await shops.Quay.Send(HttpMethod.Post, "/v1/sharings", body, ("Idempotency-Key", $"k{body.GetHashCode(StringComparison.Ordinal)}"));
            Assert.Equal(code, (string)(await refused.Problem())["code"]!);
        }

        using var small = await office.Send(HttpMethod.Post, "/v1/sharings", """{ "shop": "harbour", "opens": ["stock"], "person": "Ada" }""", ("Idempotency-Key", "k"));
        Assert.Equal("scope-missing", (string)(await small.Problem())["code"]!);
        using var never = await shops.Quay.Send(HttpMethod.Post, "/v1/sharings/nowhere/revocations", """{ "person": "Ada" }""", ("Idempotency-Key", "k"));
        Assert.Equal("unknown-shop", (string)(await never.Problem())["code"]!);
        Assert.Empty((await shops.Quay.Read("/v1/sharings"))["items"]!.AsArray());
    }
}
