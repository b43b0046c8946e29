namespace RebuildApi.PluginHost.Loading;

/// <summary>
/// Waits for plug-in code only so long. .NET can't stop a thread: code that loops for ever goes on burning one core until the service ends, which
/// is why failing hooks are suspended.
/// </summary>
internal static class TimeLimit
{
    /// <summary>Runs on a thread of its own and gives up waiting after the budget.</summary>
    /// <exception cref="PluginFault">It did not answer in time.</exception>
    public static T Run<T>(TimeSpan budget, string late, Func<T> work)
    {
        var running = Task.Factory.StartNew(work, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        if (Task.WaitAny([running], budget) < 0)
            throw PluginFault.Late(late);
        return running.GetAwaiter().GetResult();
    }
}
