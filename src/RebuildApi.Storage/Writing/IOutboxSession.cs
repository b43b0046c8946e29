namespace RebuildApi.Storage;

/// <summary>What one change may do to the outboxes of receivers. None of it is an event, nor part of the hash chain.</summary>
public interface IOutboxSession
{
    /// <summary>Opens the outbox of a new receiver: it is told of what happens after this change.</summary>
    void Open(string webhook, WebhookSecret secret);

    /// <summary>Gives a receiver another secret. Those before it sign until a time.</summary>
    void Replace(string webhook, WebhookSecret secret, DateTimeOffset oldEnd);

    /// <summary>Notes how a delivery stands, in place of what was noted before.</summary>
    void Note(Delivery delivery);

    /// <summary>Notes that everything up to a sequence number is done with. It never goes back.</summary>
    void Reach(string webhook, long sequence);

    /// <summary>Forgets the secrets and the deliveries of a receiver.</summary>
    void Close(string webhook);
}
