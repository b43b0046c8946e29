using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using RebuildApi.Server.Demo;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>The shop of the demo after a day's work, so that most addresses have something behind them; and the names of what is there.</summary>
internal sealed partial class PlayedShop
{
    public const string Unit = "sl-1047";

    private readonly Dictionary<string, string[]> _names = new(StringComparer.Ordinal)
    {
        ["family"] = [ShopServer.Family],
        ["unit"] = [Unit],
        ["shop"] = [OtherShop.Name],
        ["position"] = ["third-gear", "main-shaft", "hub-3-4"],
        ["clearance"] = ["third-end-play"],
        ["code"] = ["invalid-body"],
        ["sequence"] = ["1"],
        ["delivery"] = ["w1-1"],
        ["plugin"] = ["nobody"],
        ["webhook"] = ["w1"],
        ["instrument"] = ["mic-25"],
        ["at"] = ["third-gear/bore"],
        ["value"] = ["1.8776"],
        ["after"] = ["0"],
        ["kind"] = ["third-gear", "brackenmere-4/hub-3-4"],
        ["characteristic"] = ["bore"],
        ["label"] = ["U1001J"],
    };

    /// <summary>Plays the day.</summary>
    public static async Task<PlayedShop> Play(HttpClient http)
    {
        var shop = new PlayedShop();
        Assert.True(await new TeardownPlayer(http, TextWriter.Null).Play(Teardown.Load()));
        Assert.True(await new TeardownPlayer(http, TextWriter.Null).Play(Teardown.Shop()));
        await http.Make("/v1/instruments", """
            { "id": "mic-25", "name": "Micrometer", "type": "outside-micrometer", "resolution": { "value": 0.001, "unit": "mm" }, "limitOfError": { "value": 0.004, "unit": "mm" } }
            """);
        await shop.Plan(http);
        await http.Make("/v1/webhooks", """{ "id": "w1", "name": "Nobody", "address": "http://127.0.0.1:9/", "kinds": ["comeback"], "person": "Ada" }""");
        await http.Make("/v1/backups", "{}");
        await shop.Look(http, "backup", "/v1/backups");
        await shop.Look(http, "component", $"/v1/units/{Unit}/components");
        await shop.Look(http, "part", "/v1/parts");
        await shop.Look(http, "stock", "/v1/stock");
        await shop.Look(http, "station", "/v1/stations");
        await shop.Look(http, "judgement", $"/v1/units/{Unit}/judgements");
        await shop.Look(http, "reservation", $"/v1/units/{Unit}/reservations");
        return shop;
    }

    /// <summary>An address with names of things that are there; now and then with one that nobody has.</summary>
    public string Filled(string path, Random random) => Parameter().Replace(path, p => Uri.EscapeDataString(Name(p.Groups[1].Value, random) is { Length: > 0 } name ? name : "x"));

    /// <summary>An address with names of things that are there.</summary>
    public string Filled(string path) => Parameter().Replace(path, p => Uri.EscapeDataString(First(p.Groups[1].Value)));

    /// <summary>A name of something that is there; what nobody knows is a word.</summary>
    public string First(string what) => _names.TryGetValue(what, out var names) && names.Length > 0 ? names[0] : "x";

    /// <summary>A value for a query parameter.</summary>
    public string Query(string name, Random random) => Name(name, random);

    private string Name(string what, Random random)
    {
        var names = _names.GetValueOrDefault(what, []);
        if (names.Length > 0 && random.Next(10) > 0)
            return names[random.Next(names.Length)];
        // The client in memory can't send NUL in a path; the tests on raw connections do.
        return OddWords.Texts[random.Next(OddWords.Texts.Length)].Replace("\0", "", StringComparison.Ordinal);
    }

    private async Task Plan(HttpClient http)
    {
        var plan = (string)(await http.Make($"/v1/units/{Unit}/plans", """{ "person": "Wren" }"""))["id"]!;
        await http.Make($"/v1/units/{Unit}/plans/{plan}/approvals", """{ "person": "Wren" }""");
        await http.Make($"/v1/units/{Unit}/reservations", """{ "person": "Wren" }""");
        await http.Make($"/v1/units/{Unit}/quote", """{ "person": "Wren" }""");
        await http.Make($"/v1/units/{Unit}/quote/approvals", """{ "number": 1, "by": "Ferry Lane Farm", "person": "Wren" }""");
        await http.Make($"/v1/units/{Unit}/invoice-lines", """{ "person": "Wren" }""");
        _names["plan"] = [plan];
    }

    private async Task Look(HttpClient http, string what, string list) =>
        _names[what] = [.. (await http.Read(list))["items"]!.AsArray().Select(i => IdOf(i!))];

    private static string IdOf(JsonNode item) => (string)(item["id"] ?? item["component"] ?? item["station"])!;

    [GeneratedRegex(@"\{(\w+)\}")]
    private static partial Regex Parameter();
}
