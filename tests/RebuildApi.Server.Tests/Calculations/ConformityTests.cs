using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Calculations;

public sealed class ConformityTests
{
    // The numbers of JCGM 106:2012, clause 7: an upper limit (0.92 printed), a lower limit (0.99) and two limits (0.66), as lengths; exact values recomputed.
    [Theory]
    [InlineData("-5.47", "0.05", null, "-5.40", 0.9192433408)]
    [InlineData("509.7", "8.6", "490", null, 0.9890095474)]
    [InlineData("13.6", "1.8", "12.5", "16.3", 0.6626297865)]
    public async Task Conformance_probability_is_the_published_one(string value, string u, string? low, string? high, double expected)
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var limits = (low is null ? "" : $$""", "low": { "value": {{low}}, "unit": "mm" }""") + (high is null ? "" : $$""", "high": { "value": {{high}}, "unit": "mm" }""");
        var answer = await http.Calculate("conformity", $$"""
            { "value": { "value": {{value}}, "unit": "mm" }, "standardUncertainty": { "value": {{u}}, "unit": "mm" }{{limits}} }
            """);
        Assert.Equal(expected, answer.At("result.probability"), 1e-8);
        Assert.NotEmpty(answer["reasons"]!.AsArray());
    }

    // Deaver's values as a national laboratory's open library keeps them: process N(0, 1), instrument 0.25, limits ±2:
    // false accept 0.008, false reject 0.015 (0.0080060848 and 0.0148508842 recomputed).
    [Fact]
    public async Task Risks_over_a_process_are_the_published_ones()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var answer = await http.Calculate("conformity", """
            { "value": { "value": 0, "unit": "mm" }, "standardUncertainty": { "value": 0.25, "unit": "mm" },
              "low": { "value": -2, "unit": "mm" }, "high": { "value": 2, "unit": "mm" },
              "process": { "mean": { "value": 0, "unit": "mm" }, "standardDeviation": { "value": 1, "unit": "mm" } } }
            """);
        Assert.Equal(0.0080060848, answer.At("result.risks.falseAccept"), 1e-8);
        Assert.Equal(0.0148508842, answer.At("result.risks.falseReject"), 1e-8);
    }

    [Fact]
    public async Task Limits_that_are_missing_or_upside_down_are_refused_by_name()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        const string Value = """ "value": { "value": 1, "unit": "mm" } """;
        Assert.Equal(["/low"], await http.Refuse("conformity", $$"""{ {{Value}} }"""));
        Assert.Equal(["/high"], await http.Refuse("conformity", $$"""{ {{Value}}, "low": { "value": 2, "unit": "mm" }, "high": { "value": 1, "unit": "mm" } }"""));
    }
}
