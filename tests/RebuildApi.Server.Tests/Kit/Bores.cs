using System.Text.Json.Nodes;

namespace RebuildApi.Server.Tests.Kit;

/// <summary>Readings of the bore of the third gear, whose service limits are 1.8772 to 1.8788 in.</summary>
public static class Bores
{
    public static Task<JsonObject> Bore(
        this HttpClient http, string unit, string inches, string bench = "bench-1", string time = "2026-03-02T12:00:00Z", string instrument = "mic-25") =>
        http.Make($"/v1/units/{unit}/measurements", $$"""
            { "person": "Ada", "bench": "{{bench}}", "instrument": "{{instrument}}", "measurements": [{ "at": "third-gear/bore", "time": "{{time}}",
                "readings": [{ "value": {{inches}}, "unit": "in", "at": "1" }, { "value": {{inches}}, "unit": "in", "at": "2" }, { "value": {{inches}}, "unit": "in", "at": "3" }] }] }
            """);
}
