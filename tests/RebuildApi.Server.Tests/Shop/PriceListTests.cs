using System.Net;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Shop;

public sealed class PriceListTests
{
    private const string Header = "id,family,kind,name,vendor,price.minor,price.currency,leadDays,attributes\r\n";

    [Fact]
    public async Task Until_the_shop_has_said_how_it_charges_there_is_no_currency()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var rates = await http.Read("/v1/rates");
        Assert.Equal(("XXX", 0), ((string)rates["currency"]!, (long)rates["version"]!));
    }

    [Fact]
    public async Task A_price_in_another_currency_is_refused_with_the_shops_own()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        using var answer = await http.Send(HttpMethod.Post, "/v1/parts", Counter.Hub.Replace("EUR", "USD", StringComparison.Ordinal));
        var error = (await answer.Problem())["errors"]![0]!;
        Assert.Equal("/price/currency", (string)error["pointer"]!);
    }

    [Fact]
    public async Task The_currency_stays_once_anything_has_a_price()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/parts", Counter.Hub);
        using var answer = await http.Send(HttpMethod.Patch, "/v1/rates", """{ "currency": "USD" }""", ("If-Match", "*"));
        Assert.Equal("invalid-content", (string)(await answer.Problem())["code"]!);
    }

    [Fact]
    public async Task What_a_part_names_must_be_in_its_family()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        using var answer = await http.Send(HttpMethod.Post, "/v1/parts", Counter.Hub
            .Replace("\"vintage\": \"late\"", "\"vintage\": \"oval\", \"colour\": \"red\"", StringComparison.Ordinal));
        var pointers = (await answer.Problem())["errors"]!.AsArray().Select(e => (string)e!["pointer"]!).Order(StringComparer.Ordinal);
        Assert.Equal(["/attributes/colour", "/attributes/vintage"], pointers);
    }

    [Fact]
    public async Task A_changed_price_names_the_version_it_saw()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/parts", Counter.Hub);
        using var changed = await http.Send(HttpMethod.Patch, "/v1/parts/hub-34", """{ "price": { "minor": 12400, "currency": "EUR" } }""", ("If-Match", "\"c-1\""));
        using var late = await http.Send(HttpMethod.Patch, "/v1/parts/hub-34", """{ "leadDays": 9 }""", ("If-Match", "\"c-1\""));
        Assert.Equal(HttpStatusCode.OK, changed.StatusCode);
        var conflict = await late.Problem();
        Assert.Equal(12400, (long)conflict["current"]!["price"]!["minor"]!);
    }

    [Fact]
    public async Task The_exported_table_taken_over_again_changes_nothing()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/parts", Counter.Hub);
        var table = await http.GetStringAsync("/v1/parts.csv");
        using var answer = await http.Table("/v1/parts/imports", table);
        var report = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
        Assert.Equal((1, 0, 1, 0), ((int)report["rows"]!, (int)report["stored"]!, (int)report["unchanged"]!, (int)report["refused"]!));
    }

    [Fact]
    public async Task One_bad_row_refuses_the_whole_table_and_is_named()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        using var answer = await http.Table("/v1/parts/imports", Header
            + "a,brackenmere-4,hub-3-4,Hub,Invented,100,EUR,3,vintage=late\r\n"
            + "b,brackenmere-4,hub-3-4,Hub,Invented,free,EUR,3,vintage=oval\r\n"
            + "c,brackenmere-4,no-such,Hub,Invented,100,EUR,-3,\r\n");
        var errors = (await answer.Problem())["errors"]!.AsArray().Select(e => (string)e!["pointer"]!);
        Assert.Equal(["row/3/price.minor", "row/4/leadDays"], errors);
        Assert.Empty((await http.Read("/v1/parts"))["items"]!.AsArray());
    }

    [Fact]
    public async Task Bad_rows_are_left_out_when_that_is_chosen_and_reported_one_by_one()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        using var answer = await http.Table("/v1/parts/imports?bad=skip", Header
            + "a,brackenmere-4,hub-3-4,Hub,Invented,100,EUR,3,vintage=late\r\n"
            + "a,brackenmere-4,hub-3-4,Hub,Invented,100,EUR,3,\r\n"
            + "b,brackenmere-4,hub-3-4,Hub,Invented,100,EUR,3,vintage=oval\r\n"
            + "c,brackenmere-4,no-such,Hub,Invented,100,EUR,3,\r\n"
            + "#end,4,,,,,,,\r\n");
        var report = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
        Assert.Equal((4, 1, 3), ((int)report["rows"]!, (int)report["stored"]!, (int)report["refused"]!));
        Assert.Equal(["row/3/id", "row/4/attributes", "row/5/kind"], report["errors"]!.AsArray().Select(e => (string)e!["pointer"]!));
    }

    [Fact]
    public async Task A_row_that_was_changed_since_it_was_exported_is_not_overwritten()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/parts", Counter.Hub);
        var table = await http.GetStringAsync("/v1/parts.csv");
        using var changed = await http.Send(HttpMethod.Patch, "/v1/parts/hub-34", """{ "leadDays": 9 }""", ("If-Match", "*"));
        using var answer = await http.Table("/v1/parts/imports", table);
        Assert.Equal("row/2/version", (string)(await answer.Problem())["errors"]![0]!["pointer"]!);
    }

    [Theory]
    [InlineData("id,family\r\n\"a,b\r\n")]
    [InlineData("id,colour\r\na,red\r\n")]
    [InlineData("id,id\r\na,b\r\n")]
    public async Task A_table_that_is_none_of_a_price_list_is_refused(string csv)
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        using var answer = await http.Table("/v1/parts/imports", csv);
        Assert.True((int)answer.StatusCode is 400 or 422);
        await answer.Problem();
    }

    [Fact]
    public async Task A_table_sent_twice_under_one_key_is_taken_over_once()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        var csv = System.Text.Encoding.UTF8.GetBytes(Header + "a,brackenmere-4,hub-3-4,Hub,Invented,100,EUR,3,\r\n");
        using var first = await http.Send(HttpMethod.Post, "/v1/parts/imports", csv, "text/csv", ("Idempotency-Key", "k"));
        using var again = await http.Send(HttpMethod.Post, "/v1/parts/imports", csv, "text/csv", ("Idempotency-Key", "k"));
        Assert.Equal("true", again.Headers.GetValues("Idempotency-Replayed").Single());
        Assert.Equal(await first.Content.ReadAsStringAsync(), await again.Content.ReadAsStringAsync());
    }
}
