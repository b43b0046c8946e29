using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using RebuildApi.Server.Access;
using RebuildApi.Storage;
using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Kit;

/// <summary>The whole service on a real connection of this machine, over a data folder of its own, which goes with it.</summary>
public sealed class RealServer : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly DirectoryInfo _folder;
    private readonly TempSchema? _schema;

    private RealServer(WebApplication app, DirectoryInfo folder, TempSchema? schema, string token) => (_app, _folder, _schema, Token) = (app, folder, schema, token);

    /// <summary>The administrator's token.</summary>
    public string Token { get; }

    /// <summary>Where it is.</summary>
    public string Address => _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();

    /// <summary>A folder that goes with it.</summary>
    public string Folder => _folder.FullName;

    public static async Task<RealServer> Open()
    {
        var folder = Directory.CreateTempSubdirectory("rebuild-real-test-");
        var schema = TempSchema.Of(folder);
        var app = RebuildApplication.Create([$"--Rebuild:DataFolder={folder.FullName}", $"--Rebuild:Database={schema?.Connection}", "--Rebuild:Listen=http://127.0.0.1:0", "--Logging:LogLevel:Default=Warning"]);
        var token = await TokenDesk.Issue(app.Services.GetRequiredService<IStore>(), new NewToken("tests", Scope.Administrator), TimeProvider.System);
        await app.StartAsync();
        return new RealServer(app, folder, schema, token);
    }

    public HttpClient Client()
    {
        var http = new HttpClient { BaseAddress = new Uri(Address) };
        http.DefaultRequestHeaders.Authorization = new("Bearer", Token);
        return http;
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
        _folder.Delete(recursive: true);
        _schema?.Dispose();
    }
}
