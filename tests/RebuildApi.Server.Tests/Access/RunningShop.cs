using System.Collections.Concurrent;
using System.Net.Sockets;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using RebuildApi.Server.Access;
using RebuildApi.Storage;

namespace RebuildApi.Server.Tests.Access;

/// <summary>The service on a real port, without plug-ins, and everything that it logs, down to the finest.</summary>
public sealed class RunningShop : IAsyncDisposable
{
    private readonly DirectoryInfo _folder;
    private readonly WebApplication _app;

    private RunningShop(DirectoryInfo folder, WebApplication app) => (_folder, _app) = (folder, app);

    /// <summary>Everything that was logged.</summary>
    public ConcurrentQueue<string> Log { get; } = [];

    /// <summary>The administrator's token.</summary>
    public string Token { get; private set; } = "";

    public Uri Address => new(_app.Urls.First().Replace("0.0.0.0", "127.0.0.1", StringComparison.Ordinal));

    public static async Task<RunningShop> Start(params string[] settings)
    {
        var folder = Directory.CreateTempSubdirectory("rebuild-access-test-");
        var app = RebuildApplication.Create(
        [
            $"--Rebuild:DataFolder={folder.FullName}", $"--Rebuild:PluginFolder={folder.FullName}", "--Rebuild:Listen=http://127.0.0.1:0",
            "--Logging:Console:LogLevel:Default=None", "--Logging:LogLevel:Default=Trace", "--Logging:LogLevel:Microsoft.AspNetCore=Trace", .. settings,
        ]);
        var shop = new RunningShop(folder, app);
        app.Services.GetRequiredService<ILoggerFactory>().AddProvider(new Capture(shop.Log));
        shop.Token = await TokenDesk.Issue(app.Services.GetRequiredService<IStore>(), new NewToken("tests", Scope.Administrator), TimeProvider.System);
        await app.StartAsync();
        return shop;
    }

    /// <summary>A client that trusts any certificate and keeps no cookies.</summary>
    public HttpClient Client(string? token = null)
    {
        var http = new HttpClient(new SocketsHttpHandler
        {
            UseCookies = false,
            AllowAutoRedirect = false,
            SslOptions = new() { RemoteCertificateValidationCallback = (_, _, _, _) => true },
        })
        { BaseAddress = Address };
        if (token is not null)
            http.DefaultRequestHeaders.Authorization = new("Bearer", token);
        return http;
    }

    /// <summary>Sends these very bytes and gives what comes back until the end.</summary>
    public async Task<string> Raw(string request)
    {
        using var client = new TcpClient();
        await client.ConnectAsync("127.0.0.1", Address.Port);
        await using var stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request));
        using var reader = new StreamReader(stream);
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        return await reader.ReadToEndAsync(patience.Token);
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
        _folder.Delete(recursive: true);
    }

    private sealed class Capture(ConcurrentQueue<string> log) : ILoggerProvider, ILogger
    {
        public ILogger CreateLogger(string categoryName) => this;

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull
        {
            log.Enqueue($"{state}");
            return null;
        }

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            var values = state is IEnumerable<KeyValuePair<string, object?>> pairs ? string.Join(' ', pairs.Select(p => $"{p.Key}={p.Value}")) : "";
            log.Enqueue($"{formatter(state, exception)} {values} {exception}");
        }

        public void Dispose()
        {
        }
    }
}
