using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Calculations;

public sealed class GaugeAndChartTests
{
    // AIAG, Measurement systems analysis, 4th edition: ten parts, three appraisers, three trials (read in four copies that agree).
    private static readonly (string Appraiser, string Rows)[] Study =
    [
        ("A", "0.29 -0.56 1.34 0.47 -0.80 0.02 0.59 -0.31 2.26 -1.36/0.41 -0.68 1.17 0.50 -0.92 -0.11 0.75 -0.20 1.99 -1.25/0.64 -0.58 1.27 0.64 -0.84 -0.21 0.66 -0.17 2.01 -1.31"),
        ("B", "0.08 -0.47 1.19 0.01 -0.56 -0.20 0.47 -0.63 1.80 -1.68/0.25 -1.22 0.94 1.03 -1.20 0.22 0.55 0.08 2.12 -1.62/0.07 -0.68 1.34 0.20 -1.28 0.06 0.83 -0.34 2.19 -1.50"),
        ("C", "0.04 -1.38 0.88 0.14 -1.46 -0.29 0.02 -0.46 1.77 -1.49/-0.11 -1.13 1.09 0.20 -1.07 -0.67 0.01 -0.56 1.45 -1.77/-0.15 -0.96 0.67 0.11 -1.45 -0.49 0.21 -0.49 1.87 -2.16"),
    ];

    private static string Readings(int leaveOut = 0) => string.Join(", ", (
        from appraiser in Study
        from row in appraiser.Rows.Split('/')
        from cell in row.Split(' ').Select((value, part) => (value, part))
        select $$"""{ "appraiser": "{{appraiser.Appraiser}}", "part": "{{cell.part}}", "reading": { "value": {{cell.value}}, "unit": "mm" } }""").Skip(leaveOut));

    // Published: EV 0.199933, GRR 0.302373, PV 1.042327 (interaction pooled), 4 categories; by average and range 5 categories, %GRR 26.68.
    [Fact]
    public async Task The_published_gauge_study_comes_out_by_both_methods()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var anova = await http.Calculate("gauge-study", $$"""{ "readings": [{{Readings()}}] }""");
        Assert.Equal(0.199933, anova.At("result.repeatability.value"), 1e-6);
        Assert.Equal(0.302373, anova.At("result.gauge.value"), 2e-6);
        Assert.Equal(1.042327, anova.At("result.partVariation.value"), 1e-6);
        Assert.Equal(4, anova.At("result.distinctCategories"));
        var range = await http.Calculate("gauge-study", $$"""{ "method": "average-and-range", "readings": [{{Readings()}}] }""");
        Assert.Equal(26.68, range.At("result.percentOfStudy"), 0.02);
        Assert.Equal(5, range.At("result.distinctCategories"));
    }

    [Fact]
    public async Task A_study_with_a_reading_missing_is_refused()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        Assert.Equal(["/readings"], await http.Refuse("gauge-study", $$"""{ "readings": [{{Readings(leaveOut: 1)}}] }"""));
    }

    // Arithmetic of an individuals chart: σ = mean moving range/1.128379 (ASTM Manual 7, from memory): ranges 0.02 and 0.03, mean 0.025.
    [Fact]
    public async Task A_value_beyond_the_limits_of_the_steady_time_is_signalled()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var answer = await http.Calculate("control-chart", """
            { "values": [{ "value": 0.31, "unit": "mm" }, { "value": 0.33, "unit": "mm" }, { "value": 0.30, "unit": "mm" }, { "value": 0.52, "unit": "mm" }], "steady": 3 }
            """);
        Assert.Equal(0.025 / 1.128379, answer.At("result.sigma.value"), 1e-6);
        Assert.Equal(3, answer.At("result.signals.0.index"));
        Assert.Equal("beyond-limit", answer.Text("result.signals.0.code"));
    }

    [Fact]
    public async Task Subgroups_of_several_sizes_and_both_forms_at_once_are_refused()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        const string One = """{ "value": 1, "unit": "mm" }""";
        Assert.Equal(["/subgroups"], await http.Refuse("control-chart", $$"""{ "subgroups": [{ "values": [{{One}}, {{One}}] }, { "values": [{{One}}, {{One}}, {{One}}] }] }"""));
        Assert.Equal([""], await http.Refuse("control-chart", "{ }"));
    }
}
