namespace RebuildApi.Storage.Sql;

/// <summary>How far each receiver has come, its secrets and its deliveries.</summary>
internal sealed class OutboxRows(Statements statements, string shop, ChainWriter chain) : IOutboxSession
{
    // Deliveries that went well are only looked at when something is wrong around them.
    private const long KeepDelivered = 1000;

    private const string Upsert =
        """
        INSERT INTO webhook_delivery (shop, webhook, sequence, at, kind, state, attempts, first, last, status, error)
        VALUES (@shop, @webhook, @sequence, @at, @kind, @state, @attempts, @first, @last, @status, @error)
        ON CONFLICT (shop, webhook, sequence) DO UPDATE SET
            state = @state, attempts = @attempts, first = @first, last = @last, status = @status, error = @error
        """;

    private const string Forget =
        "DELETE FROM webhook_delivery WHERE shop = @shop AND webhook = @webhook AND state = 'delivered' AND sequence < @oldest";

    public void Open(string webhook, WebhookSecret secret)
    {
        statements.Run(
            "INSERT INTO webhook_outbox (shop, webhook, sequence) VALUES (@shop, @webhook, @sequence)",
            ("shop", shop), ("webhook", webhook), ("sequence", chain.Head.Sequence));
        Insert(webhook, secret);
    }

    public void Replace(string webhook, WebhookSecret secret, DateTimeOffset oldEnd)
    {
        statements.Run(
            "DELETE FROM webhook_secret WHERE shop = @shop AND webhook = @webhook AND ends <= @now",
            ("shop", shop), ("webhook", webhook), ("now", Stamp.Of(chain.Now)));
        statements.Run(
            "UPDATE webhook_secret SET ends = @ends WHERE shop = @shop AND webhook = @webhook AND ends IS NULL",
            ("shop", shop), ("webhook", webhook), ("ends", Stamp.Of(oldEnd)));
        Insert(webhook, secret);
    }

    public void Note(Delivery delivery)
    {
        statements.Run(
            Upsert,
            ("shop", shop), ("webhook", delivery.Webhook), ("sequence", delivery.Sequence), ("at", Stamp.Of(delivery.At)), ("kind", delivery.Kind),
            ("state", OutboxQueries.Word(delivery.State)), ("attempts", delivery.Attempts), ("first", Stamp.Of(delivery.First)), ("last", Stamp.Of(delivery.Last)),
            ("status", delivery.Status), ("error", delivery.Error));
        statements.Run(Forget, ("shop", shop), ("webhook", delivery.Webhook), ("oldest", delivery.Sequence - KeepDelivered));
    }

    public void Reach(string webhook, long sequence) => statements.Run(
        "UPDATE webhook_outbox SET sequence = @sequence WHERE shop = @shop AND webhook = @webhook AND sequence < @sequence",
        ("sequence", sequence), ("shop", shop), ("webhook", webhook));

    public void Close(string webhook)
    {
        statements.Run("DELETE FROM webhook_secret WHERE shop = @shop AND webhook = @webhook", ("shop", shop), ("webhook", webhook));
        statements.Run("DELETE FROM webhook_delivery WHERE shop = @shop AND webhook = @webhook", ("shop", shop), ("webhook", webhook));
        statements.Run("DELETE FROM webhook_outbox WHERE shop = @shop AND webhook = @webhook", ("shop", shop), ("webhook", webhook));
    }

    private void Insert(string webhook, WebhookSecret secret) => statements.Run(
        "INSERT INTO webhook_secret (shop, webhook, secret, made, ends) VALUES (@shop, @webhook, @secret, @made, NULL)",
        ("shop", shop), ("webhook", webhook), ("secret", secret.Secret), ("made", Stamp.Of(secret.Made)));
}
