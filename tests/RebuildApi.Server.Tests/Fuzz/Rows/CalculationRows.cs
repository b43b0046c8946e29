namespace RebuildApi.Server.Tests.Fuzz.Rows;

/// <summary>Values of the right shape that make no sense together.</summary>
internal static class CalculationRows
{
    public static readonly Row[] Senseless =
    [
        new(422, "POST /v1/calculations/uncertainty", """{ "readings": null }"""),
        new(422, "POST /v1/calculations/monte-carlo", """{ "function": "ratio" }"""),
        new(422, "POST /v1/calculations/gauge-study", """
            { "readings": [
                { "appraiser": "Ada", "part": "1", "reading": { "value": 30.601, "unit": "mm" } }, { "appraiser": "Ada", "part": "1", "reading": { "value": 30.602, "unit": "mm" } },
                { "appraiser": "Ada", "part": "2", "reading": { "value": 30.640, "unit": "mm" } }, { "appraiser": "Ada", "part": "2", "reading": { "value": 30.642, "unit": "mm" } },
                { "appraiser": "Ben", "part": "1", "reading": { "value": 30.603, "unit": "mm" } }, { "appraiser": "Ben", "part": "1", "reading": { "value": 30.602, "unit": "mm" } },
                { "appraiser": "Ben", "part": "1", "reading": { "value": 30.601, "unit": "mm" } }, { "appraiser": "Ben", "part": "2", "reading": { "value": 30.643, "unit": "mm" } }] }
            """),
        new(422, "POST /v1/calculations/loop", """{ "window": { "low": { "value": 0.020, "unit": "in" }, "high": { "value": 0.010, "unit": "in" } } }"""),
        new(422, "POST /v1/calculations/thermal", """{ "materials": [{ "id": "brass", "perMillionKelvin": 19 }] }"""),
        new(422, "POST /v1/calculations/selection", """{ "choices": [{ "id": "ring" }] }"""),
        new(422, "POST /v1/calculations/case-depth", """{ "traverse": [{ "depth": { "value": 0.7, "unit": "mm" }, "vickers": 580, "rockwellC": 54 }, { "depth": { "value": 0.9, "unit": "mm" }, "vickers": 520 }] }"""),
        new(422, "POST /v1/calculations/engagement", """{ "sleeveDriveAngle": { "value": 90, "unit": "°" } }"""),
        new(422, "POST /v1/calculations/synchronizer", """{ "keys": { "count": 3, "springForce": { "value": 20, "unit": "N" }, "rampAngle": { "value": 80, "unit": "°" }, "friction": 0.3 } }"""),
        new(422, "POST /v1/calculations/helical-forces", """{ "helixAngle": { "value": 90, "unit": "°" } }"""),
        new(422, "POST /v1/calculations/bearing-life", """{ "axial": { "value": 900, "unit": "N" } }"""),
        new(422, "POST /v1/allocations", """{ "units": ["nobody"] }"""),
        new(422, "POST /v1/families/{family}/diagnoses", """{ "complaint": [{ "symptom": "sings" }] }"""),
        new(422, "POST /v1/units/{unit}/positions/{position}/candidates", """{ "parts": [{ "label": "offer 1", "attributes": { "colour": "red" } }] }"""),
    ];
}
