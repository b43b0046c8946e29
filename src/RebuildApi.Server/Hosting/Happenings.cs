using RebuildApi.Storage;

namespace RebuildApi.Server;

/// <summary>What happens in the records, in whichever copy of the service.</summary>
internal static class Happenings
{
    private const int AtOnce = 1000;

    /// <summary>Hands out everything that happens after a sequence number, a bundle at a time, until it is cancelled.</summary>
    public static async IAsyncEnumerable<IReadOnlyList<StoreEvent>> After(
        this IStore store, long seen, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken stop)
    {
        while (true)
        {
            await store.NextEvent(seen, stop);
            var events = await store.Events(seen, AtOnce, stop);
            if (events.IsEmpty)
                continue;
            yield return events;
            seen = events[^1].Sequence;
        }
    }
}
