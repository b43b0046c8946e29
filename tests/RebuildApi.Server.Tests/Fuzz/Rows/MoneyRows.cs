namespace RebuildApi.Server.Tests.Fuzz.Rows;

/// <summary>Prices in the shop's currency, more than is on the shelf, and more than the customer agreed to.</summary>
internal static class MoneyRows
{
    private const string Price = "\"price\": { \"minor\": 4500, \"currency\": \"EUR\" }";

    public static readonly Row[] All =
    [
        .. Twice("POST /v1/parts", $$"""{ "id": "d-1", {{Price}} }"""),
        new(200, "PATCH /v1/parts/{part}", $$"""{ {{Price}} }"""),
        new(200, "POST /v1/parts/imports", $$"""{ "rows": [{ "id": "d-2", "family": "brackenmere-4", "kind": "sleeve-3-4", "name": "Sleeve", "vendor": "Harbour Gear Supply (invented)", {{Price}}, "leadDays": 6 }] }"""),
        .. Twice("POST /v1/stock", $$"""{ "id": "d-1", {{Price}} }"""),
        new(200, "POST /v1/stock/imports", $$"""{ "rows": [{ "id": "d-2", "family": "brackenmere-4", "kind": "snap-ring-3-4", "member": "093", "origin": "new", "count": 8, "person": "Ada", {{Price}} }] }"""),
        new(409, "POST /v1/units/{unit}/reservations", """{ "items": [{ "stock": "d-2", "count": 90 }] }"""),
        new(201, "POST /v1/units/{unit}/reservations", """{ "items": [{ "stock": "d-2", "count": 8 }] }"""),
        new(200, "PATCH /v1/stock/{stock}", """{ "count": 1 }""", "/v1/stock/d-2"),
        new(201, "POST /v1/units/{unit}/quote", $$"""{ "extras": [{ "id": "paint", "text": "Paint the case", {{Price}}, "sort": "labour", "quantity": 45, "need": "optional" }] }"""),
        new(409, "POST /v1/units/{unit}/quote/approvals", """{ "number": 1 }"""),
        new(201, "POST /v1/units/{unit}/quote/approvals", """{ "number": 2 }""") { Key = "agreed" },
        new(422, "POST /v1/units/{unit}/quote/approvals", """{ "number": 3 }""") { Key = "agreed" },
        new(409, "POST /v1/units/{unit}/invoice-lines", """{ "lines": null, "extras": [{ "id": "gold", "text": "Gild the case", "price": { "minor": 99000000, "currency": "EUR" } }] }"""),
    ];

    /// <summary>A reservation of more than is on the shelf by now is not held longer.</summary>
    public static Row Longer(string reservation) =>
        new(409, "PATCH /v1/units/{unit}/reservations/{reservation}", """{ "released": false, "hours": 24 }""", "/v1/units/{unit}/reservations/" + reservation);

    private static Row[] Twice(string operation, string with) => [new(201, operation, with), new(409, operation, with)];
}
