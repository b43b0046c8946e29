using Microsoft.AspNetCore.Builder;
using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Copies;

/// <summary>Two whole services on real connections, each with a data folder of its own, over one database and one folder of attachments.</summary>
public sealed class TwoCopies : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("rebuild-copies-test-");
    private readonly TempSchema _schema;

    private TwoCopies() => _schema = TempSchema.Of(_folder)!;

    public WebApplication First { get; private set; } = null!;

    public WebApplication Second { get; private set; } = null!;

    public HttpClient One { get; private set; } = null!;

    public HttpClient Other { get; private set; } = null!;

    public static async Task<TwoCopies> Open(Action<string>? prepare = null)
    {
        var copies = new TwoCopies();
        prepare?.Invoke(copies.DataFolder("one"));
        prepare?.Invoke(copies.DataFolder("other"));
        copies.First = await copies.Start("one");
        copies.Second = await copies.Start("other");
        (copies.One, copies.Other) = (Client(copies.First), Client(copies.Second));
        return copies;
    }

    public void Meddle(string sql) => _schema.Meddle(sql);

    public async ValueTask DisposeAsync()
    {
        One.Dispose();
        Other.Dispose();
        await First.DisposeAsync();
        await Second.DisposeAsync();
        _schema.Dispose();
        _folder.Delete(recursive: true);
    }

    private static HttpClient Client(WebApplication app) => new() { BaseAddress = new Uri(app.Urls.First()) };

    private string DataFolder(string name) => Directory.CreateDirectory(Path.Combine(_folder.FullName, name)).FullName;

    private async Task<WebApplication> Start(string name)
    {
        var app = RebuildApplication.Create([
            $"--Rebuild:DataFolder={DataFolder(name)}",
            $"--Rebuild:Database={_schema.Connection}",
            $"--Rebuild:AttachmentFolder={DataFolder("attachments")}",
            $"--Rebuild:KeyFolder={DataFolder("keys")}",
            "--Rebuild:Listen=http://127.0.0.1:0", "--Rebuild:Access=this-machine", "--Logging:LogLevel:Default=None",
        ]);
        await app.StartAsync();
        return app;
    }
}
