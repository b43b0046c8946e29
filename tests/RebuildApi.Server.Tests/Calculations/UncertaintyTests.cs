using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Calculations;

public sealed class UncertaintyTests
{
    // JCGM 100:2008, annex H.1, end gauge: components 25, 9.7, 2.9 and 16.6 nm with 18, 25.6, 50 and 2 degrees of freedom. u = 32 nm printed
    // (31.671122 recomputed from these), ν_eff cut down to 16, t(0.99, 16) = 2.92.
    [Fact]
    public async Task Budget_of_the_published_end_gauge_gives_its_uncertainty_and_factor()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var answer = await http.Calculate("uncertainty", """
            { "coverage": 0.99, "budget": [
                { "name": "standard", "standardUncertainty": { "value": 25, "unit": "nm" }, "degreesOfFreedom": 18 },
                { "name": "difference", "standardUncertainty": { "value": 9.7, "unit": "nm" }, "degreesOfFreedom": 25.6 },
                { "name": "expansion", "standardUncertainty": { "value": 2.9, "unit": "nm" }, "degreesOfFreedom": 50 },
                { "name": "temperature", "standardUncertainty": { "value": 16.6, "unit": "nm" }, "degreesOfFreedom": 2 }] }
            """);
        Assert.Equal(31.671122e-6, answer.At("result.standardUncertainty.value"), 1e-12);
        Assert.Equal(16, answer.At("result.factorFreedom"));
        Assert.Equal(2.92, answer.At("result.coverageFactor"), 0.005);
        Assert.Equal(1, Enumerable.Range(0, 4).Sum(i => answer.At($"result.budget.{i}.share")), 1e-6);
    }

    // JCGM 100:2008, 4.3.7: a half-width a known without more is worth a/√3; the limit of an outside micrometer to 25 mm is 4 µm (DIN 863).
    [Fact]
    public async Task One_reading_with_a_micrometer_carries_its_limit_of_error_and_its_step()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var answer = await http.Calculate("uncertainty", """
            { "readings": [{ "value": 20.013, "unit": "mm" }],
              "instrument": { "resolution": { "value": 0.001, "unit": "mm" }, "limitOfError": { "value": 0.004, "unit": "mm" } } }
            """);
        Assert.Equal(20.013, answer.At("result.value.value"));
        Assert.Equal(Math.Sqrt((0.004 * 0.004 / 3) + (0.001 * 0.001 / 12)), answer.At("result.standardUncertainty.value"), 1e-9);
    }

    // The block that a micrometer was set by brings its own standard uncertainty: a line of the budget, as from a registered instrument.
    [Fact]
    public async Task The_standard_that_an_instrument_was_set_by_has_its_line_in_the_budget()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var answer = await http.Calculate("uncertainty", """
            { "readings": [{ "value": 20.013, "unit": "mm" }],
              "instrument": { "resolution": { "value": 0.001, "unit": "mm" }, "limitOfError": { "value": 0.004, "unit": "mm" },
                "referenceUncertainty": { "value": 0.003, "unit": "mm" } } }
            """);
        Assert.Equal(Math.Sqrt((0.004 * 0.004 / 3) + (0.001 * 0.001 / 12) + (0.003 * 0.003)), answer.At("result.standardUncertainty.value"), 1e-9);
        Assert.Equal(["resolution", "limit-of-error", "reference-standard"], Enumerable.Range(0, 3).Select(i => answer.Text($"result.budget.{i}.name")));
        Assert.Equal(["/instrument/referenceUncertainty/unit"], await http.Refuse("uncertainty", """
            { "readings": [{ "value": 20.013, "unit": "mm" }],
              "instrument": { "resolution": { "value": 0.001, "unit": "mm" }, "referenceUncertainty": { "value": 3, "unit": "N" } } }
            """));
    }

    // JCGM 100:2008, annex H.1: a 50 mm end gauge of 11.5e-6/°C whose temperature is known to ±0.05 °C has a component of 16.6 nm by it. A steel instrument as
    // warm as the part takes it away; one 10 K warmer reads 50 mm · 11.5e-6/K · 10 K too little.
    [Fact]
    public async Task Temperatures_and_expansions_of_part_and_instrument_have_their_lines_in_the_budget()
    {
        const string part = """ "readings": [{ "value": 50.000623, "unit": "mm" }], "temperature": { "value": 20, "unit": "°C" }, "temperatureHalfWidth": { "value": 0.05, "unit": "K" }, "material": { "perMillionKelvin": 11.5 } """;
        const string gauge = """ "instrument": { "resolution": { "value": 0.001, "unit": "mm" }, "expansion": { "perMillionKelvin": 11.5, "halfWidth": 1 } } """;
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();

        var alone = await http.Calculate("uncertainty", "{" + part + "}");
        var together = await http.Calculate("uncertainty", "{" + part + "," + gauge + "}");
        var apart = await http.Calculate("uncertainty", "{" + part + "," + gauge + """, "instrumentTemperature": { "value": 30, "unit": "°C" } }""");

        Assert.Equal("temperature", alone.Text("result.budget.1.name"));
        Assert.Equal(16.6e-6, alone.At("result.budget.1.standardUncertainty.value"), 0.05e-6);
        Assert.Equal(["resolution", "instrument-expansion"], Enumerable.Range(0, 2).Select(i => together.Text($"result.budget.{i}.name")));
        Assert.Equal(50.006373, apart.At("result.value.value"), 1e-6);
        Assert.Equal(
            ["resolution", "temperature", "instrument-expansion", "instrument-temperature"], Enumerable.Range(0, 4).Select(i => apart.Text($"result.budget.{i}.name")));
        Assert.Equal(["/temperatureHalfWidth/unit"], await http.Refuse("uncertainty", """
            { "readings": [{ "value": 50, "unit": "mm" }], "temperatureHalfWidth": { "value": 1, "unit": "mm" } }
            """));
    }

    [Fact]
    public async Task Readings_and_a_budget_together_are_refused_and_so_is_a_line_that_says_nothing()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        Assert.Equal([""], await http.Refuse("uncertainty", """{ }"""));
        Assert.Equal(["/budget/0"], await http.Refuse("uncertainty", """{ "budget": [{ "name": "standard" }] }"""));
    }

    [Fact]
    public async Task Values_that_run_out_of_what_can_be_kept_are_refused_and_never_a_fault()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        Assert.Equal(["/readings"], await http.Refuse("uncertainty", """
            { "readings": [{ "value": 1000, "unit": "m" }], "temperature": { "value": 1e12, "unit": "K" }, "material": { "perMillionKelvin": 1000 } }
            """));
        Assert.Equal(["/loops"], await http.Refuse("selection", """
            { "loops": [{ "id": "a", "without": { "value": 1, "unit": "mm" }, "standardUncertainty": { "value": 1e12, "unit": "m" }, "terms": [{ "choice": "ring" }],
                "window": { "low": { "value": 1, "unit": "mm" } } }],
              "choices": [{ "id": "ring", "members": [{ "id": "087", "thickness": { "value": 2, "unit": "mm" } }] }] }
            """));
    }
}
