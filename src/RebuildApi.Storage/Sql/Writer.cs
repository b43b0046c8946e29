using System.Threading.Channels;

namespace RebuildApi.Storage.Sql;

/// <summary>The one task that writes. Whatever waits when it comes round goes into the next group.</summary>
internal sealed class Writer : IAsyncDisposable
{
    private const int LongestQueue = 4096;

    private readonly Channel<PendingChange> _queue = Channel.CreateBounded<PendingChange>(
        new BoundedChannelOptions(LongestQueue) { SingleReader = true });

    private readonly IGroupWriter _commit;
    private readonly Announcement _announcement;
    private readonly int _groupSize;
    private readonly Task _loop;

    public Writer(IGroupWriter commit, Announcement announcement, int groupSize)
    {
        _commit = commit;
        _announcement = announcement;
        _groupSize = groupSize;
        _loop = Task.Run(Loop);
    }

    public async Task<StoredAnswer> Write(WriteRequest request, Func<IWriteSession, StoredAnswer> work, CancellationToken cancellation)
    {
        var change = new PendingChange(request, work);
        try
        {
            await _queue.Writer.WriteAsync(change, cancellation);
        }
        catch (ChannelClosedException e)
        {
            throw new StorageUnavailableException("stopping", "The service is stopping and takes no more changes.", e);
        }

        await using var registration = cancellation.UnsafeRegister((_, token) => change.GiveUp(token), null);
        return await change.Answer;
    }

    /// <summary>Takes no more, carries through what waits, and ends.</summary>
    public async ValueTask DisposeAsync()
    {
        _queue.Writer.TryComplete();
        await _loop;
        _commit.Dispose();
    }

    private async Task Loop()
    {
        while (await _queue.Reader.WaitToReadAsync())
        {
            if (_commit.Run(Waiting()) is { } sequence)
                _announcement.Announce(sequence);
        }
    }

    private List<PendingChange> Waiting()
    {
        var group = new List<PendingChange>();
        while (group.Count < _groupSize && _queue.Reader.TryRead(out var change))
            group.Add(change);
        return group;
    }
}
