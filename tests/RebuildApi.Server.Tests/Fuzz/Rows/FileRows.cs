namespace RebuildApi.Server.Tests.Fuzz.Rows;

/// <summary>A photo that is sent, fetched, too large, there already and, with what names its customer, erased.</summary>
internal static class FileRows
{
    private const string Send = "POST /v1/units/{unit}/attachments";
    private const string Fetch = "GET /v1/units/{unit}/attachments/{attachment}";
    private static readonly byte[] Photo = [0xFF, 0xD8, 0xFF, 0xE0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

    public static readonly Row[] All =
    [
        new(201, "POST /v1/units", """{ "id": "gone", "customer": "Gull Point Taxis" }"""),
        new(201, Send, At: "/v1/units/gone/attachments?person=Ada&id=p-1") { File = Photo },
        new(409, Send, At: "/v1/units/gone/attachments?person=Ada&id=p-1") { File = Photo },
        new(413, Send, At: "/v1/units/gone/attachments?person=Ada") { File = new byte[17 << 20] },
        new(200, Fetch, At: "/v1/units/gone/attachments/p-1"),
        new(304, Fetch, At: "/v1/units/gone/attachments/p-1") { Has = "*" },
        new(201, "POST /v1/units/{unit}/stages", """{ "to": "returned-unrepaired", "note": "Too dear.", "notAvailable": null }""", "/v1/units/gone/stages"),
        new(201, "POST /v1/customers/erasures", """{ "customer": "Gull Point Taxis", "files": true }""") { Key = "erased" },
        new(422, "POST /v1/customers/erasures", """{ "customer": "Gull Point Taxis", "files": false }""") { Key = "erased" },
        new(404, "POST /v1/customers/erasures", """{ "customer": "Nobody of this name" }"""),
        new(410, Fetch, At: "/v1/units/gone/attachments/p-1"),
    ];
}
