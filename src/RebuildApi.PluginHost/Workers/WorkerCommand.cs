using System.Collections.Immutable;
using System.Reflection;
using System.Runtime.InteropServices;

namespace RebuildApi.PluginHost;

/// <summary>How a worker process is started: a program that does nothing but call <see cref="PluginWorker.RunProcess"/>.</summary>
/// <param name="FileName">The program.</param>
/// <param name="Arguments">Its arguments.</param>
public sealed record WorkerCommand(string FileName, ImmutableArray<string> Arguments)
{
    /// <summary>The program of an assembly, run with arguments that make it a worker.</summary>
    /// <param name="program">An assembly with an entry point.</param>
    /// <param name="arguments">What makes it a worker.</param>
    public static WorkerCommand Of(Assembly program, params ImmutableArray<string> arguments)
    {
        // In a single file there is no assembly to name: the program is the file itself.
        var location = Path.Combine(AppContext.BaseDirectory, program.GetName().Name + ".dll");
        return File.Exists(location)
            ? new WorkerCommand(DotNet(), [location, .. arguments])
            : new WorkerCommand(Environment.ProcessPath!, arguments);
    }

    private static string DotNet()
    {
        var name = OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet";
        if (Path.GetFileName(Environment.ProcessPath) == name)
            return Environment.ProcessPath!;
        // The runtime lies in shared/Microsoft.NETCore.App/<version> of its installation.
        var beside = Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", name));
        return File.Exists(beside) ? beside : name;
    }
}

/// <summary>How much a worker process may take.</summary>
/// <param name="HeapBytes">The most that managed objects may take.</param>
/// <param name="DataBytes">The most that the process may write to in memory, all in all; counted where the system has <c>prlimit</c>.</param>
/// <param name="AnswerBytes">The longest answer.</param>
public sealed record WorkerLimits(long HeapBytes = 256 << 20, long DataBytes = 512 << 20, int AnswerBytes = 32 << 20);
