namespace RebuildApi.Storage;

/// <summary>A change that waits for the writer, and the promise of its answer. The answer is given only after the commit.</summary>
internal sealed class PendingChange(WriteRequest request, Func<IWriteSession, StoredAnswer> work)
{
    private const int Waiting = 0;
    private const int Begun = 1;
    private const int GivenUp = 2;

    // Continuations must not run on the writer.
    private readonly TaskCompletionSource<StoredAnswer> _promise = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private int _state = Waiting;
    private StoredAnswer? _answer;
    private Exception? _refusal;

    public WriteRequest Request { get; } = request;

    public Func<IWriteSession, StoredAnswer> Work { get; } = work;

    public Task<StoredAnswer> Answer => _promise.Task;

    /// <summary>The writer takes it up. False when the caller has gone.</summary>
    public bool Begin() => Interlocked.CompareExchange(ref _state, Begun, Waiting) == Waiting;

    /// <summary>The caller goes. Without effect once the writer has begun.</summary>
    public void GiveUp(CancellationToken cancellation)
    {
        if (Interlocked.CompareExchange(ref _state, GivenUp, Waiting) == Waiting)
            _promise.TrySetCanceled(cancellation);
    }

    /// <summary>What will be answered once the group is committed.</summary>
    public void Done(StoredAnswer answer) => _answer = answer;

    /// <summary>What will be thrown once the group is committed.</summary>
    public void Refused(Exception refusal) => _refusal = refusal;

    /// <summary>The group is committed.</summary>
    public void Publish()
    {
        if (_refusal is not null)
            _promise.TrySetException(_refusal);
        else if (_answer is not null)
            _promise.TrySetResult(_answer);
    }

    /// <summary>The group is lost, and this change with it.</summary>
    public void Fail(Exception why) => _promise.TrySetException(why);
}
