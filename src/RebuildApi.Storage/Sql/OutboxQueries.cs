using System.Collections.Immutable;
using System.Data.Common;
using System.Globalization;
using Dapper;

namespace RebuildApi.Storage.Sql;

/// <summary>What is asked of the outboxes of receivers.</summary>
internal sealed class OutboxQueries(DbConnection connection, string shop)
{
    private const string Deliveries =
        """
        SELECT webhook, sequence, at, kind, state, attempts, first, last, status, error FROM webhook_delivery
        WHERE shop = @shop AND webhook = @webhook AND sequence > @after AND (@state IS NULL OR state = @state) ORDER BY sequence LIMIT @limit
        """;

    private const string Secrets =
        """
        SELECT secret, made, ends FROM webhook_secret WHERE shop = @shop AND webhook = @webhook AND (ends IS NULL OR ends > @now)
        ORDER BY ends IS NOT NULL, made DESC
        """;

    public Outbox? Outbox(string webhook, DateTimeOffset now)
    {
        var reached = connection.ExecuteScalar<long?>(
            "SELECT sequence FROM webhook_outbox WHERE shop = @shop AND webhook = @webhook", new { shop, webhook });
        return reached is { } sequence
            ? new Outbox(sequence, [.. connection.Query<SecretRow>(Secrets, new { shop, webhook, now = Stamp.Of(now) }).Select(Secret)])
            : null;
    }

    public Page<Delivery> Page(string webhook, DeliveryState? state, string? after, int limit)
    {
        limit = Cursor.Limit(limit);
        var begin = after is null ? 0 : SequenceOf(after);
        var rows = Rows(webhook, state, begin, limit + 1);
        return Cursor.Page(rows, limit, d => d.Sequence.ToString(CultureInfo.InvariantCulture));
    }

    public Delivery? Find(string webhook, long sequence) => Rows(webhook, null, sequence - 1, 1).FirstOrDefault(d => d.Sequence == sequence);

    public static string Word(DeliveryState state) => state switch
    {
        DeliveryState.Waiting => "waiting",
        DeliveryState.Delivered => "delivered",
        _ => "dead",
    };

    private IEnumerable<Delivery> Rows(string webhook, DeliveryState? state, long after, int limit) => connection
        .Query<Row>(Deliveries, new { shop, webhook, after, state = state is { } wanted ? Word(wanted) : null, limit }).Select(Read);

    private static long SequenceOf(string cursor) =>
        long.TryParse(Cursor.After(cursor), NumberStyles.None, CultureInfo.InvariantCulture, out var sequence) ? sequence : throw new UnknownCursorException(cursor);

    private static Delivery Read(Row r) => new(
        r.Webhook, r.Sequence, Stamp.Read(r.At), r.Kind, Enum.Parse<DeliveryState>(r.State, ignoreCase: true), (int)r.Attempts, Stamp.Read(r.First), Stamp.Read(r.Last), (int?)r.Status, r.Error);

    private static WebhookSecret Secret(SecretRow r) => new(r.Secret, Stamp.Read(r.Made), r.Ends is { } ends ? Stamp.Read(ends) : null);

    private sealed record SecretRow
    {
        public string Secret { get; init; } = "";

        public string Made { get; init; } = "";

        public string? Ends { get; init; }
    }

    private sealed record Row
    {
        public string Webhook { get; init; } = "";

        public long Sequence { get; init; }

        public string At { get; init; } = "";

        public string Kind { get; init; } = "";

        public string State { get; init; } = "";

        public long Attempts { get; init; }

        public string First { get; init; } = "";

        public string Last { get; init; } = "";

        public long? Status { get; init; }

        public string? Error { get; init; }
    }
}
