using RebuildApi.Storage;
using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Access;

/// <summary>A store in a folder of its own, without a service.</summary>
public sealed class StoreOfTokens : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("rebuild-token-test-");

    private readonly TempSchema? _schema;

    public StoreOfTokens()
    {
        _schema = TempSchema.Of(_folder);
        Store = Another();
    }

    public IStore Store { get; }

    public string Folder => _folder.FullName;

    /// <summary>The same records opened again, as another process would.</summary>
    public IStore Another() => Stores.Open(new StoreOptions(Path.Combine(_folder.FullName, "shop.db"), TimeProvider.System) { Database = _schema?.Connection });

    public async ValueTask DisposeAsync()
    {
        await Store.DisposeAsync();
        _folder.Delete(recursive: true);
        _schema?.Dispose();
    }
}
