namespace RebuildApi.Storage;

/// <summary>A duty that this copy of the service has, and no other.</summary>
public interface IDuty : IAsyncDisposable
{
    /// <summary>Cancelled when it was lost: another copy may have it then.</summary>
    CancellationToken Lost { get; }
}

/// <summary>A duty that nobody else can want.</summary>
internal sealed class OwnDuty : IDuty
{
    public static readonly OwnDuty Always = new();

    public CancellationToken Lost => CancellationToken.None;

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
