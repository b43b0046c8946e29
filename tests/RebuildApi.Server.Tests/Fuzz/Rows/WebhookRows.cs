namespace RebuildApi.Server.Tests.Fuzz.Rows;

/// <summary>A receiver that nobody is behind, with a delivery that it does not take; once it failed five times it is left alone.</summary>
internal static class WebhookRows
{
    private static readonly string[] Forms = ["", ".csv", ".ndjson"];

    /// <summary>What can be had of a receiver and one of its deliveries.</summary>
    public static Row[] Of(string receiver, string delivery) =>
    [
        .. Forms.Select(form => new Row(200, "GET /v1/webhooks/{webhook}/deliveries" + form, At: $"/v1/webhooks/{receiver}/deliveries{form}")),
        new(200, "POST /v1/webhooks/{webhook}/pings", At: $"/v1/webhooks/{receiver}/pings"),
        new(201, "POST /v1/webhooks/{webhook}/secrets", At: $"/v1/webhooks/{receiver}/secrets") { Key = "secret" },
        new(422, "POST /v1/webhooks/{webhook}/secrets", """{ "hours": 25 }""", $"/v1/webhooks/{receiver}/secrets") { Key = "secret" },
        Again(receiver, delivery, 200),
    ];

    /// <summary>A delivery that is sent again: the answer says how it went, until the receiver is left alone.</summary>
    public static Row Again(string receiver, string delivery, int status) =>
        new(status, "POST /v1/webhooks/{webhook}/deliveries/{delivery}/redeliveries", At: $"/v1/webhooks/{receiver}/deliveries/{delivery}/redeliveries");
}
