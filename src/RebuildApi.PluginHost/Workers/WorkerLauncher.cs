using System.Collections.Immutable;
using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace RebuildApi.PluginHost.Workers;

/// <summary>
/// Starts worker processes with as little around them as the system allows: an empty environment, a capped heap, and where Linux has the usual tools
/// also no network, a process space of its own (whatever a plug-in starts ends with it) and capped memory.
/// </summary>
internal sealed class WorkerLauncher(WorkerCommand command, WorkerLimits limits)
{
    private static readonly TimeSpan TrialTime = TimeSpan.FromSeconds(10);
    private readonly Lazy<(ImmutableArray<string> Prefix, string Words)> _containment = new(() => Contain(limits));

    /// <summary>The longest answer that is read.</summary>
    public int LongestAnswer => limits.AnswerBytes;

    /// <summary>How far a worker is contained, in plain words.</summary>
    public string Containment => _containment.Value.Words;

    /// <summary>Starts a worker.</summary>
    /// <exception cref="PluginFault">It can't be started.</exception>
    public Process Start()
    {
        ImmutableArray<string> line = [.. _containment.Value.Prefix, PathOf(command.FileName), .. command.Arguments];
        try
        {
            return Process.Start(Prepare(line, limits))!;
        }
        catch (Exception e) when (e is Win32Exception or InvalidOperationException)
        {
            throw new PluginFault(PluginState.Failed, "hook-crashed", "Its worker process can't be started: " + PluginFault.Tame(e.Message));
        }
    }

    /// <summary>The program as a path: the worker's environment is empty, so nothing further down could look for it.</summary>
    private static string PathOf(string program)
    {
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        return Path.IsPathRooted(program)
            ? program
            : folders.Select(f => Path.Combine(f, program)).FirstOrDefault(File.Exists)
                ?? throw new PluginFault(PluginState.Failed, "hook-crashed", $"There is no program {program} for its worker process.");
    }

    private static ProcessStartInfo Prepare(ImmutableArray<string> line, WorkerLimits limits)
    {
        var start = new ProcessStartInfo(line[0], line.Skip(1))
        {
            UseShellExecute = false,
            CreateNoWindow = true,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Path.GetPathRoot(AppContext.BaseDirectory)!,
        };
        var inherited = NeededToStart.Select(n => (Name: n, Value: Environment.GetEnvironmentVariable(n))).Where(v => v.Value is not null).ToList();
        start.Environment.Clear();
        foreach (var (name, value) in inherited)
            start.Environment[name] = value;
        // https://learn.microsoft.com/dotnet/core/runtime-config/garbage-collector: the value is hexadecimal.
        start.Environment["DOTNET_GCHeapHardLimit"] = limits.HeapBytes.ToString("X", CultureInfo.InvariantCulture);
        start.Environment["DOTNET_gcServer"] = "0";
        // No diagnostics port that another process could talk to, no files in the temporary folder.
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        // The runtime keeps code apart from data through a file in memory, which a process that may write no files can't have.
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        return start;
    }

    /// <summary>What .NET itself may need to be found and to start.</summary>
    private static readonly ImmutableArray<string> NeededToStart =
        ["DOTNET_ROOT", "DOTNET_SYSTEM_GLOBALIZATION_INVARIANT", "SystemRoot", "LD_LIBRARY_PATH"];

    private static (ImmutableArray<string> Prefix, string Words) Contain(WorkerLimits limits)
    {
        const string LetGo = "processes that it starts and lets go";
        var data = limits.DataBytes.ToString(CultureInfo.InvariantCulture);
        var heap = (limits.HeapBytes >> 20).ToString(CultureInfo.InvariantCulture);
        var capWords = $"it writes nothing to files, its memory is capped (objects {heap} MiB)";
        ImmutableArray<string> apart = ["/usr/bin/unshare", "--user", "--map-current-user", "--net", "--pid", "--fork", "--kill-child"];
        ImmutableArray<string> capped = ["/usr/bin/prlimit", "--data=" + data, "--core=0", "--fsize=0"];
        if (Works([.. apart, .. capped], limits))
            return ([.. apart, .. capped], $"In a worker process without network; {capWords}, and whatever it starts ends with it.");
        if (Works(capped, limits))
            return (capped, $"In a worker process; {capWords}. Not contained: network, and {LetGo}.");
        return ([], $"In a worker process; its objects are capped at {heap} MiB. Not contained: other memory, files, network, and {LetGo}.");
    }

    private static bool Works(ImmutableArray<string> prefix, WorkerLimits limits)
    {
        if (!OperatingSystem.IsLinux() || !File.Exists(prefix[0]))
            return false;
        try
        {
            using var trial = Process.Start(Prepare([.. prefix, "/bin/true"], limits))!;
            return trial.WaitForExit(TrialTime) && trial.ExitCode == 0;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }
}
