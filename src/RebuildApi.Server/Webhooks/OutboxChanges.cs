using System.Collections.Immutable;
using RebuildApi.Storage;

namespace RebuildApi.Server.Webhooks;

/// <summary>What the sender itself writes. It is carried through even while the service stops, since what was delivered was delivered.</summary>
public static class OutboxChanges
{
    private static readonly StoredAnswer Nothing = new(StatusCodes.Status204NoContent, "", ReadOnlyMemory<byte>.Empty, ImmutableSortedDictionary<string, string>.Empty);
    private static readonly WriteRequest Sender = new("webhooks", "deliver", null, "", DryRun: false);

    /// <summary>Writes to the outboxes.</summary>
    public static Task Keep(this IStore store, Action<IOutboxSession> change) => store.Write(Sender, session =>
    {
        change(session.Outboxes);
        return Nothing;
    }, CancellationToken.None);

    /// <summary>Sends a receiver nothing more until someone says so.</summary>
    public static Task Pause(this IStore store, string webhook) => store.Write(Sender, session =>
    {
        if (session.Find<Webhook>(webhook) is { Ended: false, Paused: false } stands)
            session.Put(stands with { Paused = true }, stands.Version);
        return Nothing;
    }, CancellationToken.None);
}
