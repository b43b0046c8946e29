using RebuildApi.Storage;

namespace RebuildApi.Server;

/// <summary>Work that one copy of the service does for all of them.</summary>
internal static class Duties
{
    private static readonly TimeSpan Again = TimeSpan.FromSeconds(10);

    /// <summary>Works while this copy has a duty, waits while another has it, and goes on after it was lost or the records could not be used.</summary>
    public static async Task Keep(Func<IStore> records, string duty, Func<IStore, CancellationToken, Task> work, Action<Exception> trouble, TimeProvider time, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            try
            {
                var store = records();
                await using var held = await store.TakeUp(duty, stop);
                using var both = CancellationTokenSource.CreateLinkedTokenSource(stop, held.Lost);
                await work(store, both.Token);
            }
            catch (OperationCanceledException)
            {
                // Stopped, or lost to another copy.
            }
            catch (Exception e)
            {
                trouble(e);
                await Task.Delay(Again, time, stop).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }
}
