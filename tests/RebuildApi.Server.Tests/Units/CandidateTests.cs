using System.Net;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Units;

/// <summary>Which parts would run at a place of a unit, and whether a sleeve may serve both its gears.</summary>
public sealed class CandidateTests
{
    private const string Sleeve = "/v1/units/u1/positions/sleeve-3-4/candidates";

    [Fact]
    public async Task Found_parts_of_other_units_are_offered_with_their_unit_and_fitted_ones_are_not()
    {
        await using var server = ShopServer.Open();
        using var http = await WithTwoUnits(server);
        await http.Make("/v1/units/u2/components", """{ "id": "loose", "position": "sleeve-3-4", "label": "bag 7" }""");
        await http.Make("/v1/units/u2/components", """{ "id": "running", "position": "sleeve-1-2", "role": "fitted" }""");
        await http.Make("/v1/units/u1/components", """{ "id": "there", "position": "sleeve-3-4" }""");

        var page = await http.Read(Sleeve);
        var only = Assert.Single(page["items"]!.AsArray())!;

        Assert.Equal(("loose", "other-unit", "u2", "sleeve-3-4", "found", "bag 7"), (
            (string)only["component"]!, (string)only["from"]!, (string)only["unit"]!, (string)only["position"]!, (string)only["role"]!, (string)only["label"]!));
        Assert.Equal("not-assessed", (string)only["outcome"]!);
        Assert.NotEmpty(only["settles"]!.AsArray());
        Assert.Equal(1, (int)page["outcomes"]!["not-assessed"]!);
    }

    [Fact]
    public async Task A_part_laid_aside_in_the_unit_itself_can_go_back_and_one_that_was_handed_over_cannot()
    {
        await using var server = ShopServer.Open();
        using var http = await WithTwoUnits(server);
        await http.Make("/v1/units/u2/components", """{ "id": "gone", "position": "sleeve-3-4" }""");
        await http.Make("/v1/units/u1/components", """{ "id": "aside", "position": "sleeve-3-4" }""");
        await http.Make("/v1/units/u1/components", """{ "id": "new", "position": "sleeve-3-4", "role": "chosen", "origin": "new" }""");
        await server.PutAt("u2", "handed-over");

        var only = Assert.Single((await http.Read(Sleeve))["items"]!.AsArray())!;
        Assert.Equal(("aside", "same-unit"), ((string)only["component"]!, (string)only["from"]!));
    }

    // A straight sleeve rides the edge of back-tapered teeth (common practice, no source).
    [Fact]
    public async Task Parts_that_are_only_spoken_of_come_back_best_first_and_nothing_is_stored()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units/u1/findings", """
            { "person": "Ada", "bench": "b", "findings": [
              { "position": "third-gear", "attribute": { "id": "dog.form", "value": "back-tapered" } }, { "position": "third-gear", "attribute": { "id": "dog.drive-flank", "value": "sound" } },
              { "position": "third-gear", "attribute": { "id": "dog.coast-flank", "value": "sound" } }] }
            """);
        var before = await http.Read("/v1/units/u1/components");

        var answer = await http.Make(Sleeve, """{ "parts": [{ "label": "offer 1", "attributes": { "form": "straight" } }, { "label": "offer 2", "attributes": { "form": "back-tapered" } }] }""");

        Assert.Equal(["offer 2", "offer 1"], answer["items"]!.AsArray().Select(c => (string)c!["label"]!));
        Assert.Equal("incompatible", (string)answer["items"]![1]!["outcome"]!);
        Assert.Contains(answer["items"]![1]!["pairings"]!.AsArray(), p => p!["reasons"]!.AsArray().Any(r => (string)r!["code"]! == "engagement-straight-on-back-taper"));
        Assert.Equal(before["items"]!.ToJsonString(), (await http.Read("/v1/units/u1/components"))["items"]!.ToJsonString());
    }

    [Fact]
    public async Task What_does_not_fit_the_kind_is_refused_by_field_and_a_place_that_is_not_there_by_address()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var field = await http.Send(HttpMethod.Post, Sleeve, """{ "parts": [{ "attributes": { "form": "square" } }, { "readings": [{ "characteristic": "nothing", "reading": { "value": 1, "unit": "mm" } }] }] }""");
        Assert.Equal(["/parts/0/attributes/form", "/parts/1/readings/0/characteristic"], (await field.Problem())["errors"]!.AsArray().Select(e => (string)e!["pointer"]!));
        using var third = await http.GetAsync(new Uri("/v1/units/u1/positions/keys-3-4%233/candidates", UriKind.Relative));
        using var fourth = await http.GetAsync(new Uri("/v1/units/u1/positions/keys-3-4%234/candidates", UriKind.Relative));
        Assert.Equal(HttpStatusCode.OK, third.StatusCode);
        Assert.Equal("no-such-position", (string)(await fourth.Problem())["code"]!);
    }

    // One sleeve serves third and top: a back-tapered gear on one side and a straight one on the other leave one side wrong whatever its form
    // (common practice, no source).
    [Fact]
    public async Task A_sleeve_between_gears_of_different_vintage_is_judged_with_both_and_cured_for_both()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units/u1/findings", $$"""{ "person": "Ada", "bench": "b", "findings": [{{Teeth("third-gear", "back-tapered")}}, {{Teeth("input-gear", "straight")}}, {{Seen("sleeve-3-4", "form", "straight")}}] }""");

        var all = await http.Read("/v1/units/u1/neighbourhoods");
        var sleeve = all["items"]!.AsArray().Single(n => (string)n!["sleeve"]! == "sleeve-3-4")!;

        Assert.Equal("incompatible", (string)sleeve["outcome"]!);
        Assert.Equal(["straight", "back-tapered"], sleeve["choices"]!.AsArray().Select(c => (string)c!["form"]!));
        Assert.Equal([true, false], sleeve["choices"]!.AsArray().Select(c => (bool)c!["present"]!));
        Assert.All(sleeve["choices"]!.AsArray(), c => Assert.Equal("incompatible", (string)c!["outcome"]!));
        Assert.Equal("neighbourhood-no-form-suits", (string)sleeve["reasons"]![0]!["code"]!);
        Assert.NotEmpty(sleeve["cures"]!.AsArray());
        Assert.All(sleeve["cures"]!.AsArray(), c => Assert.True((bool)c!["sufficient"]!));
    }

    private static async Task<HttpClient> WithTwoUnits(ShopServer server)
    {
        var http = await server.WithUnit();
        await http.Make("/v1/units", $$"""{ "id": "u2", "tag": "T-2", "family": "{{ShopServer.Family}}", "person": "Ada" }""");
        return http;
    }

    private static string Teeth(string gear, string form) => string.Join(
        ", ", Seen(gear, "dog.form", form), Seen(gear, "dog.drive-flank", "sound"), Seen(gear, "dog.coast-flank", "sound"), Seen(gear, "dog.stop", "none"));

    private static string Seen(string position, string attribute, string value) =>
        $$"""{ "position": "{{position}}", "attribute": { "id": "{{attribute}}", "value": "{{value}}" } }""";
}
