using System.Collections.Immutable;
using Microsoft.Extensions.Options;
using RebuildApi.Storage;

namespace RebuildApi.Server.Backups;

/// <summary>Makes backups one at a time, and remembers how the last attempt went.</summary>
public sealed class BackupDesk(IServiceProvider services, IOptions<ServerOptions> options, TimeProvider time) : IDisposable
{
    private readonly SemaphoreSlim _one = new(1, 1);
    private volatile FailedBackup? _failed;

    /// <summary>The backups that are there.</summary>
    public BackupShelf Shelf { get; } = Records.Backups(options.Value, null, time);

    /// <summary>The last attempt, when it failed and none succeeded since.</summary>
    public FailedBackup? Failed => _failed;

    /// <summary>Makes one and checks it.</summary>
    /// <exception cref="StorageUnavailableException">It could not be made; the code and the words say why.</exception>
    public async Task<Backup> Make(string by, CancellationToken cancellation)
    {
        await _one.WaitAsync(cancellation);
        try
        {
            // Copying works a while and awaits nothing: not on the thread that answers.
            var backup = await Task.Run(() => Shelf.Make(services.GetRequiredService<IStore>(), by, cancellation), cancellation);
            _failed = null;
            return backup;
        }
        catch (Exception e) when (e is StorageUnavailableException or IOException or UnauthorizedAccessException)
        {
            _failed = new FailedBackup(time.GetUtcNow(), by, e.Message);
            throw e as StorageUnavailableException ?? new StorageUnavailableException("io-error", $"The backup can't be written: {e.Message}", e);
        }
        finally
        {
            _one.Release();
        }
    }

    /// <summary>Waits until no other copy of the service makes one; null when there can be no other.</summary>
    public async Task<IDuty?> Turn(CancellationToken cancellation) =>
        Records.Of(options.Value, time).Database is null ? null : await services.GetRequiredService<IStore>().TakeUp("backups", cancellation);

    /// <summary>Removes the oldest of those that were made by themselves.</summary>
    public ImmutableArray<string> Prune() => Shelf.Prune(options.Value.BackupsKept);

    /// <inheritdoc/>
    public void Dispose() => _one.Dispose();
}

/// <summary>A backup that could not be made.</summary>
/// <param name="Time">When, UTC.</param>
/// <param name="By">Who asked for it.</param>
/// <param name="Reason">Why not, in words.</param>
public sealed record FailedBackup(DateTimeOffset Time, string By, string Reason);
