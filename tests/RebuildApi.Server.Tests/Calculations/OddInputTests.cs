using System.Text;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Calculations;

/// <summary>Values of the right shape that stretch a formula: an answer or a problem, never a fault.</summary>
public sealed class OddInputTests
{
    private static string Same(string value) => string.Join(", ",
        from cell in Enumerable.Range(0, 8)
        let appraiser = cell < 4 ? "Ada" : "Ben"
        let part = cell % 2
        select $$"""{ "appraiser": "{{appraiser}}", "part": "{{part}}", "reading": { "value": {{value}}, "unit": "mm" } }""");

    public static TheoryData<string, string> Odd => new()
    {
        { "gauge-study", $$"""{ "readings": [{{Same("1")}}] }""" },
        { "gauge-study", $$"""{ "method": "average-and-range", "readings": [{{Same("1")}}], "tolerance": { "value": 0, "unit": "mm" } }""" },
        { "control-chart", """{ "values": [{ "value": 1, "unit": "mm" }, { "value": 1, "unit": "mm" }] }""" },
        { "monte-carlo", """
            { "function": "ratio", "inputs": [{ "name": "numerator", "kind": "rectangular", "low": { "value": 1, "unit": "mm" }, "high": { "value": 1, "unit": "mm" } },
              { "name": "denominator", "kind": "rectangular", "low": { "value": 0, "unit": "mm" }, "high": { "value": 0, "unit": "mm" } }] }
            """ },
        { "monte-carlo", """{ "dimension": "temperature", "inputs": [{ "name": "t", "kind": "arcsine", "low": { "value": 20, "unit": "°C" }, "high": { "value": 20, "unit": "°C" } }] }""" },
        { "conformity", """{ "value": { "value": 1000, "unit": "m" }, "standardUncertainty": { "value": 1e12, "unit": "m" }, "low": { "value": 1, "unit": "mm" } }""" },
        { "conformity", """{ "atLeast": { "value": 2, "unit": "mm" }, "atMost": { "value": 1, "unit": "mm" }, "low": { "value": 1, "unit": "mm" } }""" },
        { "uncertainty", """{ "dimension": "count", "readings": [{ "value": 36, "unit": "count" }] }""" },
        { "uncertainty", """{ "budget": [{ "name": "nothing", "standardUncertainty": { "value": 0, "unit": "mm" }, "degreesOfFreedom": 1 }] }""" },
        { "bearing-life", """{ "dynamicRating": { "value": 1e12, "unit": "N" }, "radial": { "value": 0, "unit": "N" }, "element": "roller" }""" },
        { "synchronizer", """
            { "force": { "value": 1e12, "unit": "N" }, "cones": [{ "friction": 2, "radius": { "value": 1000, "unit": "m" }, "halfAngle": { "value": 180, "unit": "°" } }],
              "chamferRadius": { "value": 1, "unit": "nm" }, "chamferAngle": { "value": 90, "unit": "°" }, "chamferFriction": 0 }
            """ },
        { "fit", """{ "nominal": { "value": 500.1, "unit": "mm" }, "hole": "H7", "shaft": "h6" }""" },
        { "fit", """{ "nominal": { "value": 30, "unit": "mm" }, "hole": "H99999999999", "shaft": "h6" }""" },
    };

    [Theory]
    [MemberData(nameof(Odd))]
    public async Task Odd_values_get_an_answer_or_a_problem(string what, string body)
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        using var answer = await http.Send(HttpMethod.Post, "/v1/calculations/" + what, Encoding.UTF8.GetBytes(body), "application/json");
        Assert.True((int)answer.StatusCode is 200 or 422, $"{answer.StatusCode} {await answer.Content.ReadAsStringAsync()}");
    }
}
