using System.Globalization;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Endpoints;

/// <summary>What happens in the shop, as it happens.</summary>
public static class EventEndpoints
{
    private const string LastEventId = "Last-Event-ID";
    private const int LongestSeconds = 3600;
    private const int UsualSeconds = 900;

    private static readonly QueryOption Unit = new("unit", "Only what belongs to this unit.");
    private static readonly QueryOption After = new("after", "Last sequence number already seen; 0 begins at the beginning. Left out: what happens next. The header Last-Event-ID stands before it.", "integer");
    private static readonly QueryOption Seconds = new("seconds", "How long to go on, 0 to 3600; 900 when not said. 0 gives what is there and ends.", "integer");

    /// <summary>The route.</summary>
    public static void MapEvents(this IEndpointRouteBuilder routes) => routes.Resource("events")
        .Read("/events", Follow, "followEvents", "What happens, as it happens",
            "Server-sent events: each thing that was committed, in order, none missed or doubled. A client that was cut off sends the id of its last event as Last-Event-ID.")
        .WithMetadata(Unit, After, Seconds).Produces<EventWire>(200, "text/event-stream").DisableRequestTimeout();

    private static EventStream Follow(HttpContext http)
    {
        var after = QueryText.Of(http, After.Name) is null ? (long?)null : QueryNumber.Whole(http, After.Name, 0, int.MaxValue);
        var seconds = QueryText.Of(http, Seconds.Name) is null ? UsualSeconds : QueryNumber.Whole(http, Seconds.Name, 0, LongestSeconds);
        return new EventStream(LastSeen(http) ?? after, QueryText.Of(http, Unit.Name), TimeSpan.FromSeconds(seconds));
    }

    private static long? LastSeen(HttpContext http)
    {
        var sent = http.Request.Headers[LastEventId].ToString();
        if (sent.Length == 0)
            return null;
        return long.TryParse(sent, NumberStyles.None, CultureInfo.InvariantCulture, out var seen)
            ? seen
            : throw new ProblemException(Problems.InvalidQuery, "Last-Event-ID is not the id of an event.",
                [new FieldError("header/Last-Event-ID", FieldProblems.WrongType.Code, "A whole number is needed here.", sent.Length > 100 ? sent[..100] : sent)]);
    }
}
