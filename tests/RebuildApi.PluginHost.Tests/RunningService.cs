using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;

namespace RebuildApi.PluginHost.Tests;

/// <summary>The whole service as a process of its own, over a data folder of its own.</summary>
internal sealed class RunningService : IAsyncDisposable
{
    private readonly DirectoryInfo _data = Directory.CreateTempSubdirectory("running-service-");
    private readonly Process _process;

    private RunningService(int port)
    {
        Http = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{port}"), Timeout = TimeSpan.FromMinutes(3) };
        var start = new ProcessStartInfo("dotnet", [Shelf.PathOf("RebuildApi.Server")]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["Rebuild__Listen"] = Http.BaseAddress.ToString().TrimEnd('/');
        start.Environment["Rebuild__DataFolder"] = _data.FullName;
        start.Environment["Rebuild__Access"] = "this-machine";
        start.Environment["Logging__LogLevel__Default"] = "Error";
        _process = Process.Start(start)!;
        _ = _process.StandardOutput.BaseStream.CopyToAsync(Stream.Null);
        _ = _process.StandardError.BaseStream.CopyToAsync(Stream.Null);
    }

    public HttpClient Http { get; }

    /// <summary>Where a shop drops its plug-ins.</summary>
    public string Drop => Directory.CreateDirectory(Path.Combine(_data.FullName, "plugins")).FullName;

    public int OpenFiles => Directory.EnumerateFileSystemEntries($"/proc/{_process.Id.ToString(CultureInfo.InvariantCulture)}/fd").Count();

    /// <summary>The processes that it started and that still run (Linux: the fourth word of <c>/proc/n/stat</c> is the parent).</summary>
    public int Children => Directory.EnumerateDirectories("/proc").Count(p => ParentOf(p) == _process.Id);

    public static async Task<RunningService> Start()
    {
        using var free = new TcpListener(IPAddress.Loopback, 0);
        free.Start();
        var port = ((IPEndPoint)free.LocalEndpoint).Port;
        free.Stop();
        var service = new RunningService(port);
        await Until(async () => await service.Try("/health/live") == HttpStatusCode.OK);
        return service;
    }

    public async Task<JsonObject> Post(string path, string body, string type = "application/json")
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new StringContent(body, Encoding.UTF8, type) };
        request.Headers.Add("Idempotency-Key", Guid.CreateVersion7().ToString());
        using var answer = await Http.SendAsync(request);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, $"{path}: {text}");
        return JsonNode.Parse(text.Split('\n')[0])!.AsObject();
    }

    /// <summary>A plug-in as the service lists it; null when it does not know it.</summary>
    public async Task<JsonObject?> Plugin(string id) =>
        await Try("/v1/plugins/" + id) == HttpStatusCode.OK ? await Http.GetFromJsonAsync<JsonObject>("/v1/plugins/" + id) : null;

    public static async Task Until(Func<Task<bool>> comes)
    {
        for (var look = 0; look < 1200; look++)
        {
            if (await comes())
                return;
            await Task.Delay(100);
        }

        Assert.Fail("It did not come.");
    }

    public async ValueTask DisposeAsync()
    {
        _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        _process.Dispose();
        Http.Dispose();
        _data.Delete(recursive: true);
    }

    private async Task<HttpStatusCode?> Try(string path)
    {
        try
        {
            using var answer = await Http.GetAsync(new Uri(path, UriKind.Relative));
            return answer.StatusCode;
        }
        catch (HttpRequestException)
        {
            return null;
        }
    }

    private static int ParentOf(string process)
    {
        try
        {
            var stat = File.ReadAllText(process + "/stat");
            return int.Parse(stat[(stat.LastIndexOf(')') + 2)..].Split(' ')[1], CultureInfo.InvariantCulture);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return -1;
        }
    }
}
