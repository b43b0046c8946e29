namespace RebuildApi.Server.Tests.Fuzz.Rows;

/// <summary>What is made once and can't be made again, and what then can be had.</summary>
internal static class RecordRows
{
    public static readonly Row[] All =
    [
        .. Twice("POST /v1/instruments", """{ "id": "d-1" }"""),
        .. Twice("POST /v1/instruments/{instrument}/calibrations", """{ "id": "d-1" }"""),
        .. Twice("POST /v1/instruments/{instrument}/studies", """{ "id": "d-2" }"""),
        .. Twice("POST /v1/units", """{ "id": "d-1" }"""),
        .. Twice("POST /v1/units/{unit}/sign-offs", """{ "id": "d-1" }"""),
        .. Twice("POST /v1/units/{unit}/machining", """{ "id": "d-1", "price": { "minor": 3500, "currency": "EUR" } }"""),
        new(200, "PATCH /v1/units/{unit}/machining/{machining}", At: "/v1/units/{unit}/machining/d-1") { Key = "back" },
        new(422, "PATCH /v1/units/{unit}/machining/{machining}", """{ "due": "2030-03-14" }""", "/v1/units/{unit}/machining/d-1") { Key = "back" },
        new(201, "POST /v1/units/{unit}/components", """{ "id": "g-1", "role": "found" }""", "/v1/units/d-1/components"),
        new(201, "POST /v1/units/{unit}/components", """{ "id": "g-2", "role": "found", "position": "mainshaft" }""", "/v1/units/d-1/components"),
        new(201, "POST /v1/units/{unit}/components/{component}/removals", """{ "id": "d-1" }""", "/v1/units/d-1/components/g-1/removals"),
        new(409, "POST /v1/units/{unit}/components/{component}/removals", """{ "id": "d-1" }""", "/v1/units/d-1/components/g-2/removals"),
        new(200, "GET /v1/customers/export", At: "?customer=Demo customer (invented)"),
        new(200, "GET /v1/units/{unit}/judgements/{judgement}"),
        new(304, "GET /v1/units/{unit}/judgements/{judgement}") { Has = "*" },
        new(404, "GET /v1/labels/{label}", At: "/v1/labels/U1001J"),
        new(404, "GET /v1/labels/{label}.svg", At: "/v1/labels/U1001J.svg"),
        new(201, "POST /v1/labels", """{ "unit": "sl-1047" }"""),
        new(200, "GET /v1/labels/{label}", At: "/v1/labels/U1001J"),
        new(200, "GET /v1/labels/{label}.svg", At: "/v1/labels/U1001J.svg"),
        new(200, "GET /v1/tokens/{token}", At: "/v1/tokens/tests"),
        new(409, "POST /v1/tokens/{token}/revocations", At: "/v1/tokens/tests/revocations"),
        new(201, "POST /v1/tokens", """{ "name": "d-1" }"""),
        new(200, "POST /v1/tokens/{token}/revocations", At: "/v1/tokens/d-1/revocations") { Key = "revoked" },
        new(422, "POST /v1/tokens/{token}/revocations", """{ "other": 1 }""", "/v1/tokens/d-1/revocations") { Key = "revoked" },
    ];

    /// <summary>The approval of a plug-in that lies there with this hash, and of one that does not; and a look at it again.</summary>
    public static Row[] PlugIn(string sha256) =>
    [
        new(200, "POST /v1/plugins/{plugin}/approvals", $$"""{ "sha256": "{{sha256}}" }""", "/v1/plugins/brackenmere-4/approvals?dryRun=true"),
        new(409, "POST /v1/plugins/{plugin}/approvals", At: "/v1/plugins/brackenmere-4/approvals?dryRun=true"),
        new(200, "POST /v1/plugins/{plugin}/reloads", At: "/v1/plugins/brackenmere-4/reloads?dryRun=true"),
    ];

    private static Row[] Twice(string operation, string with) => [new(201, operation, with), new(409, operation, with)];
}
