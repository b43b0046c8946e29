using System.Text.RegularExpressions;
using System.Xml.Linq;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Pages;

/// <summary>The pages of the shop: small, whole, safe, and fed by nothing but this service.</summary>
public sealed partial class PageTests
{
    private const int Most = 100_000;
    private static readonly XNamespace Drawing = "http://www.w3.org/2000/svg";

    private static readonly string[] Paths = ["/", "/shop", "/addresses", "/bench/u1", "/units/u1", "/units/u1/record", "/units/u1/assembly", "/units/u1/teardown", "/units/u1/labels", "/sign-in", "/problems"];

    [Fact]
    public async Task Every_page_is_small_and_runs_only_its_own_script()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        foreach (var path in Paths)
        {
            using var answer = await http.GetAsync(path);
            var text = await answer.Content.ReadAsStringAsync();
            Assert.True(answer.IsSuccessStatusCode, path + text);
            Assert.True(System.Text.Encoding.UTF8.GetByteCount(text) < Most, $"{path} has {text.Length} letters");
            var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
            Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotMatch("script-src[^;]*unsafe", policy);
            Assert.DoesNotMatch("(src|href)=\"(http|//)", text);
        }
    }

    [Fact]
    public async Task What_a_person_typed_stays_text_on_every_page()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units", """{ "id": "odd", "tag": "<script>alert(1)</script>", "family": "brackenmere-4", "person": "Ada", "customer": "\"><img src=x>", "words": "</script><b>" }""");
        foreach (var path in Paths)
        {
            var text = await http.GetStringAsync(path.Replace("u1", "odd", StringComparison.Ordinal));
            Assert.DoesNotContain("<script>alert", text, StringComparison.Ordinal);
            Assert.DoesNotContain("<img", text, StringComparison.Ordinal);
            Assert.DoesNotContain("</script><b>", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_bench_page_brings_the_whole_sheet_so_that_it_can_go_on_without_a_connection()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var page = await http.GetStringAsync("/bench/u1");
        var data = System.Text.Json.Nodes.JsonNode.Parse(Data().Match(page).Groups[1].Value)!;
        var rows = (await http.Read("/v1/families/brackenmere-4/sheet?limit=500"))["items"]!.AsArray();
        var parts = rows.Where(r => (string)r!["what"]! == "inspection").Select(r => (string)r!["position"]!);
        Assert.Equal(parts, data["parts"]!.AsArray().Select(p => (string)p!["s"]!));
        Assert.Equal(rows.Count(r => (string)r!["what"]! == "trial"), data["trials"]!.AsArray().Count);
        Assert.NotEmpty(data["missing"]!.AsArray());
    }

    [Fact]
    public async Task A_clearance_is_drawn_as_well_formed_xml_with_its_outcome_in_words()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var ids = (await http.Read("/v1/units/u1/clearances"))["items"]!.AsArray().Select(c => (string)c!["clearance"]!).ToArray();
        Assert.NotEmpty(ids);
        foreach (var id in ids)
        {
            using var answer = await http.GetAsync($"/v1/units/u1/clearances/{id}.svg");
            Assert.Equal("image/svg+xml", answer.Content.Headers.ContentType?.MediaType);
            var drawing = XDocument.Parse(await answer.Content.ReadAsStringAsync());
            Assert.Contains("not assessed", drawing.Root!.Element(Drawing + "title")!.Value, StringComparison.Ordinal);
        }

        using var none = await http.GetAsync("/v1/units/u1/clearances/no-such.svg");
        Assert.Equal(System.Net.HttpStatusCode.NotFound, none.StatusCode);
    }

    // Five parts: 1 + log2 5 rounded up makes four classes (Sturges, JASA 21, 1926).
    [Fact]
    public async Task Wear_and_its_chart_are_drawn_with_every_part_in_them()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        for (var i = 2; i <= 6; i++)
        {
            await http.Make("/v1/units", $$"""{ "id": "u{{i}}", "tag": "T-{{i}}", "family": "brackenmere-4", "person": "Ada" }""");
            await http.Make($"/v1/units/u{i}/measurements", $$"""{ "person": "Ada", "bench": "b1", "measurements": [{ "at": "third-gear/bore", "readings": [{ "value": 47.69{{i}}, "unit": "mm" }] }] }""");
        }

        const string What = "?family=brackenmere-4&kind=third-gear&characteristic=bore";
        var chart = XDocument.Parse(await http.GetStringAsync("/v1/statistics/control-chart.svg" + What));
        Assert.Equal(5, chart.Descendants(Drawing + "circle").Count() + chart.Descendants(Drawing + "path").Count());
        var wear = XDocument.Parse(await http.GetStringAsync("/v1/statistics/wear.svg" + What));
        var counted = wear.Descendants(Drawing + "text").Where(t => t.Value.Length > 0 && t.Value.All(char.IsAsciiDigit)).Sum(t => int.Parse(t.Value, System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(5, counted);
        using var few = await http.GetAsync("/v1/statistics/wear.svg?family=brackenmere-4&kind=third-gear&characteristic=width");
        await few.Problem();
    }

    [Fact]
    public async Task Events_are_given_once_each_in_order_and_from_where_a_client_was()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var all = Ids().Matches(await http.GetStringAsync("/v1/events?after=0&seconds=0")).Select(m => long.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
        Assert.Equal(all.Order().Distinct(), all);
        using var answer = await http.Send(HttpMethod.Get, "/v1/events?seconds=0", null, ("Last-Event-ID", all[0].ToString(System.Globalization.CultureInfo.InvariantCulture)));
        var rest = Ids().Matches(await answer.Content.ReadAsStringAsync()).Select(m => long.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(all[1..], rest);
        Assert.DoesNotContain("\"kind\":\"instrument\"", await http.GetStringAsync("/v1/events?after=0&seconds=0&unit=u1"), StringComparison.Ordinal);
        using var wrong = await http.Send(HttpMethod.Get, "/v1/events", null, ("Last-Event-ID", "x"));
        await wrong.Problem();
    }

    [Fact]
    public async Task An_event_arrives_while_the_client_listens()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var answer = await http.GetAsync("/v1/events?unit=u1", HttpCompletionOption.ResponseHeadersRead);
        using var lines = new StreamReader(await answer.Content.ReadAsStreamAsync());
        Assert.StartsWith("retry:", await lines.ReadLineAsync(), StringComparison.Ordinal);
        await http.Make("/v1/units/u1/findings", """{ "person": "Ada", "bench": "b1", "findings": [{ "position": "third-gear", "sound": true }] }""");
        string? line;
        do
            line = await lines.ReadLineAsync();
        while (line is not null && !line.Contains("\"kind\":\"finding\"", StringComparison.Ordinal));
        Assert.NotNull(line);
    }

    [GeneratedRegex("id=\"data\">(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex Data();

    [GeneratedRegex("^id: ([0-9]+)$", RegexOptions.Multiline)]
    private static partial Regex Ids();
}
