using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Calculations;

public sealed class MonteCarloTests
{
    // JCGM 101:2008, 9.2.3: four rectangular inputs of standard deviation 1 each: u = 2.00, shortest 95 % interval ±3.88
    // (exact: 2√3·(2 − (3/5)^(1/4)) = 3.8794).
    [Fact]
    public async Task Four_rectangular_inputs_give_the_published_interval_again_and_again()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var input = """{ "name": "x", "kind": "rectangular", "low": { "value": -1.732051, "unit": "mm" }, "high": { "value": 1.732051, "unit": "mm" } }""";
        var body = $$"""{ "inputs": [{{input}}, {{input}}, {{input}}, {{input}}], "digits": 3 }""";
        var answer = await http.Calculate("monte-carlo", body);
        Assert.Equal(2.00, answer.At("result.standardUncertainty.value"), 0.01);
        Assert.Equal(2 * 3.8794, answer.At("result.shortest.width.value"), 0.04);
        Assert.Equal(answer["result"]!.ToJsonString(), (await http.Calculate("monte-carlo", body))["result"]!.ToJsonString());
    }

    [Fact]
    public async Task A_distribution_with_the_wrong_fields_and_a_function_with_the_wrong_inputs_are_refused_by_name()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        const string Input = """{ "name": "a", "kind": "normal", "mean": { "value": 1, "unit": "mm" }, "standardUncertainty": { "value": 1, "unit": "mm" } }""";
        Assert.Equal(
            ["/inputs/0/standardUncertainty", "/inputs/0/low"],
            await http.Refuse("monte-carlo", """{ "inputs": [{ "name": "a", "kind": "normal", "mean": { "value": 1, "unit": "mm" }, "low": { "value": 1, "unit": "mm" } }] }"""));
        Assert.Equal(["/inputs"], await http.Refuse("monte-carlo", $$"""{ "function": "ratio", "inputs": [{{Input}}] }"""));
        Assert.Equal(["/mostTrials"], await http.Refuse("monte-carlo", $$"""{ "mostTrials": 100000000, "inputs": [{{Input}}] }""", System.Net.HttpStatusCode.BadRequest));
    }
}
