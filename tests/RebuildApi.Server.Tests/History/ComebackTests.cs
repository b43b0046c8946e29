using System.Net;
using RebuildApi.Server.Tests.Calculations;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.History;

/// <summary>Units that came back, what is counted from them, and how doubts are settled. Invented values; computed here, no source.</summary>
public sealed class ComebackTests
{
    private const string Third = """{ "person": "Ada", "complaint": [{ "symptom": "jumps-out-under-load", "gear": "third" }], "confirmed": [{ "subject": "third-gear/bore", "words": "At its limit." }] }""";

    [Fact]
    public async Task A_comeback_is_kept_with_the_readings_the_instrument_and_the_rules_that_the_unit_went_out_on()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var read = await http.Bore("u1", "1.8786");
        var kept = await http.Make("/v1/units/u1/comebacks", Third);
        Assert.Equal((string)read["stored"]![0]!["id"]!, (string)kept["restedOn"]!["measurements"]![0]!);
        Assert.Equal("mic-25", (string)kept["restedOn"]!["instruments"]![0]!);
        Assert.Equal(("brackenmere-4", "default"), ((string)kept["restedOn"]!["rules"]!["id"]!, (string)kept["restedOn"]!["policy"]!));
        await http.Make("/v1/units/u1/comebacks", $$"""{ "person": "Ben", "supersedes": "{{kept["id"]}}", "confirmed": [{ "subject": "third-end-play" }] }""");
        Assert.Equal("third-end-play", (string)Assert.Single((await http.Read("/v1/units/u1/comebacks"))["items"]!.AsArray())!["confirmed"]![0]!["subject"]!);
        Assert.Single((await http.Read("/v1/statistics/comebacks"))["items"]!.AsArray());
    }

    [Fact]
    public async Task A_comeback_links_to_the_judgement_it_went_out_on_the_readings_the_instruments_and_the_rules()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Bore("u1", "1.8786");
        var passed = await http.Make("/v1/units/u1/stages", """{ "to": "pre-strip", "person": "Ada", "notAvailable": [{ "requirement": "complaint", "reason": "None." }] }""");
        var on = (await http.Make("/v1/units/u1/comebacks", Third))["restedOn"]!;
        Assert.Equal((string)passed["judgement"]!, (string)on["judgement"]!);
        var links = on["links"]!.AsArray().Select(l => (string)l!).ToArray();
        Assert.Contains("/v1/instruments/mic-25", links);
        foreach (var link in links)
            Assert.NotEmpty(await http.Read(link));
        var kept = await http.Read(links.Single(l => l.Contains("/judgements/", StringComparison.Ordinal)));
        Assert.Equal("gate", (string)kept["kept"]!["purpose"]!);
        Assert.Equal("u1", (string)kept["snapshot"]!["unit"]!);
        Assert.NotEmpty(kept["judgement"]!["parts"]!.AsArray());
    }

    [Fact]
    public async Task A_comeback_laid_to_what_the_family_does_not_have_is_refused()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/comebacks",
            """{ "person": "Ada", "returnedAs": "u9", "confirmed": [{ "subject": "third-gaer" }, { "subject": "third-gear", "cause": "bad-luck" }] }""");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(["/returnedAs", "/confirmed/0/subject", "/confirmed/1/cause"], (await answer.Problem())["errors"]!.AsArray().Select(e => (string)e!["pointer"]!));
        Assert.Empty((await http.Read("/v1/statistics/comebacks"))["items"]!.AsArray());
    }

    // One of two: Clopper and Pearson's interval is 1 − √0.975 to √0.975 in closed form; computed here.
    [Fact]
    public async Task The_comeback_rate_counts_units_handed_over_and_not_those_still_on_the_bench()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        Assert.Equal("not-computable", (string)(await (await http.GetAsync("/v1/statistics/comeback-rate")).Problem())["code"]!);
        foreach (var unit in new[] { "u2", "u3" })
            await http.Make("/v1/units", $$"""{ "id": "{{unit}}", "tag": "{{unit}}", "family": "{{ShopServer.Family}}", "person": "Ada" }""");
        await server.PutAt("u2", "handed-over");
        await server.PutAt("u3", "handed-over");
        await http.Make("/v1/units/u2/comebacks", Third);
        var rate = await http.Read("/v1/statistics/comeback-rate");
        Assert.Equal((1, 2, true), ((int)rate["hits"]!, (int)rate["of"]!, (bool)rate["counted"]!));
        Assert.Equal(1 - Math.Sqrt(0.975), rate.At("low"), 1e-8);
        Assert.Equal(Math.Sqrt(0.975), rate.At("high"), 1e-8);
        Assert.Equal("third-gear/bore", (string)rate["bySubject"]![0]!["name"]!);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await http.GetAsync("/v1/statistics/comeback-rate?family=ostrand-5")).StatusCode);
    }

    [Fact]
    public async Task Limit_proposals_show_how_many_parts_they_rest_on_and_are_never_applied()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var which = $"family={ShopServer.Family}&kind=third-gear&characteristic=bore&units=in";
        Assert.Equal("not-computable", (string)(await (await http.GetAsync("/v1/statistics/limit-proposals?" + which)).Problem())["code"]!);
        for (var i = 0; i < 12; i++)
        {
            var unit = FormattableString.Invariant($"w{i}");
            await http.Make("/v1/units", $$"""{ "id": "{{unit}}", "tag": "{{unit}}", "family": "{{ShopServer.Family}}", "person": "Ada" }""");
            await http.Bore(unit, i < 6 ? "1.8775" : "1.8787");
            await server.PutAt(unit, "handed-over");
            if (i >= 6)
                await http.Make($"/v1/units/{unit}/comebacks", Third);
        }

        var answer = await http.Read("/v1/statistics/limit-proposals?" + which);
        Assert.Equal((12, 6, false), ((int)answer["count"]!, (int)answer["comebacks"]!, (bool)answer["applied"]!));
        var tighter = answer["proposals"]!.AsArray().Single(p => (string)p!["direction"]! == "tighter" && (string)p["side"]! == "high")!;
        Assert.Equal(1.8775, tighter.At("limit.value"), 1e-9);
        Assert.Equal((6, 6, 0, 6), ((int)tighter["beyond"]!["hits"]!, (int)tighter["beyond"]!["of"]!, (int)tighter["within"]!["hits"]!, (int)tighter["within"]!["of"]!));
        // One of 924 ways to lay six comebacks to twelve parts (Fisher's exact test); computed here.
        Assert.Equal(1.0 / 924, tighter.At("pValue"), 1e-9);
        Assert.Equal(0, (await http.Read("/v1/policy")).At("edition"));
    }

    [Fact]
    public async Task A_doubtful_verdict_names_the_finer_instrument_of_the_shop_and_how_often_it_settles()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/instruments", """
            { "id": "coarse", "name": "Worn gauge", "type": "bore-gauge", "resolution": { "value": 0.0001, "unit": "in" }, "limitOfError": { "value": 0.0005, "unit": "in" } }
            """);
        await http.Make("/v1/instruments", """
            { "id": "fine", "name": "New gauge", "type": "bore-gauge", "resolution": { "value": 0.00005, "unit": "in" }, "limitOfError": { "value": 0.00005, "unit": "in" } }
            """);
        await http.Make("/v1/instruments", """
            { "id": "late", "name": "Overdue gauge", "type": "bore-gauge", "resolution": { "value": 0.00005, "unit": "in" }, "limitOfError": { "value": 0.00005, "unit": "in" }, "calibrationDue": "2020-01-31" }
            """);
        await http.Bore("u1", "1.8785", instrument: "coarse");
        var doubtful = Assert.Single((await http.Read("/v1/units/u1/settling"))["items"]!.AsArray())!;
        Assert.Equal("third-gear/bore", (string)doubtful["subject"]!);
        Assert.Equal("fine", (string)doubtful["cheapest"]!["instrument"]!);
        Assert.DoesNotContain("late", doubtful.ToJsonString(), StringComparison.Ordinal);
        Assert.InRange(doubtful.At("cheapest.settles.share"), 0.5, 1);
    }
}
