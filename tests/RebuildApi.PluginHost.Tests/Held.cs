using System.Globalization;
using System.Runtime.Loader;

namespace RebuildApi.PluginHost.Tests;

/// <summary>What this process holds once the garbage is gone.</summary>
/// <param name="HeapBytes">Managed objects.</param>
/// <param name="WorkingBytes">Memory of the whole process.</param>
/// <param name="Handles">Open files and pipes (Linux: <c>/proc/self/fd</c>).</param>
/// <param name="Contexts">Plug-ins whose code is loaded here.</param>
internal sealed record Held(long HeapBytes, long WorkingBytes, int Handles, int Contexts)
{
    public static Held Now()
    {
        // What a finalizer lets go of is garbage only at the next collection; an unloaded context takes a few.
        for (var round = 0; round < 5; round++)
        {
            GC.Collect();
            GC.WaitForPendingFinalizers();
        }

        return new Held(GC.GetGCMemoryInfo(GCKind.FullBlocking).HeapSizeBytes, Environment.WorkingSet, Directory.EnumerateFileSystemEntries("/proc/self/fd").Count(), AssemblyLoadContext.All.Count(c => c.IsCollectible));
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{HeapBytes / 1048576.0:0.0} MiB of objects, {WorkingBytes / 1048576.0:0} MiB in all, {Handles} handles, {Contexts} plug-ins loaded");
}
