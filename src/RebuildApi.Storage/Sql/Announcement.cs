namespace RebuildApi.Storage.Sql;

/// <summary>Tells whoever waits that something was committed.</summary>
internal sealed class Announcement(long sequence)
{
    private readonly Lock _lock = new();
    private TaskCompletionSource _next = NewSource();
    private long _sequence = sequence;

    /// <summary>Wakes everyone when the number has grown.</summary>
    public void Announce(long sequence)
    {
        TaskCompletionSource woken;
        lock (_lock)
        {
            if (sequence <= _sequence)
                return;
            _sequence = sequence;
            woken = _next;
            _next = NewSource();
        }

        woken.SetResult();
    }

    /// <summary>Waits until the number is greater than one already seen.</summary>
    public async Task<long> After(long seen, CancellationToken cancellation)
    {
        while (true)
        {
            Task next;
            lock (_lock)
            {
                if (_sequence > seen)
                    return _sequence;
                next = _next.Task;
            }

            await next.WaitAsync(cancellation);
        }
    }

    private static TaskCompletionSource NewSource() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}
