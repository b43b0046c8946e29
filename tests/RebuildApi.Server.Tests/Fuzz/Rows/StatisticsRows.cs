namespace RebuildApi.Server.Tests.Fuzz.Rows;

/// <summary>Questions about the records of the shop, of parts that were read and of parts that never were.</summary>
internal static class StatisticsRows
{
    private const string Read = "?family=brackenmere-4&kind=third-gear&characteristic=bore";
    private const string NeverRead = "?family=ostrand-5&kind=main-case&characteristic=input-cup-depth";

    private static readonly string[] Forms = ["", ".png", ".svg"];
    private static readonly string[] Drawn = ["wear", "control-chart"];

    /// <summary>Where this part was read at the first bench again and again.</summary>
    public static Row[] Of(string part) =>
    [
        new(200, "GET /v1/checks/one", At: "?family=brackenmere-4&at=third-gear/bore&value=1.8776&unit=in"),
        new(200, "GET /v1/instruments/{instrument}/recall", At: "?since=2026-01-01T00:00:00Z"),
        new(200, "GET /v1/stations/{station}/bias", At: "/v1/stations/bench-1/bias?part=" + part + "&characteristic=bore&reference=1.8780in"),
        .. Forms.SelectMany(form => Drawn.SelectMany(Both(form))),
        .. Both("")("limit-proposals"),
        new(422, "GET /v1/statistics/comeback-rate", At: "?family=ostrand-5"),
        new(201, "POST /v1/families/{family}/priors", """{ "units": 1 }"""),
    ];

    private static Func<string, IEnumerable<Row>> Both(string form) => what =>
        [new Row(200, $"GET /v1/statistics/{what}{form}", At: Read), new Row(422, $"GET /v1/statistics/{what}{form}", At: NeverRead)];
}
