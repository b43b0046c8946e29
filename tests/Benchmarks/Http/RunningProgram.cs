using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using RebuildApi.TestKit;

namespace RebuildApi.Benchmarks.Http;

/// <summary>A program under test in a process of its own on a free port of this machine, ended with its owner.</summary>
internal sealed class RunningProgram : IDisposable
{
    private readonly Process _process;

    private RunningProgram(Process process, string address) => (_process, Http) = (process, new HttpClient
    {
        BaseAddress = new Uri(address),
        Timeout = Timeout.InfiniteTimeSpan,
    });

    public HttpClient Http { get; }

    /// <summary>Memory that is in use, MiB.</summary>
    public double Memory
    {
        get
        {
            _process.Refresh();
            return _process.WorkingSet64 / 1048576.0;
        }
    }

    /// <summary>The service on records of its own.</summary>
    public static RunningProgram Service(string records)
    {
        var program = Repository.PathTo("src", "RebuildApi.Server", "bin", "Release", "net10.0", "RebuildApi.Server.dll");
        var address = FreeAddress();
        return Start([program], address, new Dictionary<string, string>
        {
            ["Rebuild__Listen"] = address,
            ["Rebuild__DataFolder"] = records,
            ["Rebuild__Access"] = "this-machine",
            ["Logging__LogLevel__Default"] = "Warning",
        });
    }

    /// <summary>One of the programs to compare with; see <see cref="Bare"/>.</summary>
    public static RunningProgram Baseline(params string[] arguments)
    {
        var address = FreeAddress();
        return Start([typeof(RunningProgram).Assembly.Location, .. arguments, address], address, []);
    }

    /// <summary>Asks until there is an answer.</summary>
    public async Task<byte[]> First(string path)
    {
        while (true)
        {
            try
            {
                return await Http.GetByteArrayAsync(new Uri(path, UriKind.Relative));
            }
            catch (HttpRequestException) when (!_process.HasExited)
            {
                await Task.Delay(5);
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Http.Dispose();
        _process.Kill(entireProcessTree: true);
        _process.WaitForExit();
        _process.Dispose();
    }

    private static RunningProgram Start(string[] arguments, string address, Dictionary<string, string> settings)
    {
        var start = new ProcessStartInfo("dotnet", arguments) { RedirectStandardOutput = true };
        foreach (var (name, value) in settings)
            start.Environment[name] = value;
        var process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        return new RunningProgram(process, address);
    }

    private static string FreeAddress()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}");
    }
}
