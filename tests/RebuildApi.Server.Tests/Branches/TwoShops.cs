using RebuildApi.Server.Access;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Branches;

/// <summary>Two shops with a service each, over one database: one file, or one schema when the tests are run against PostgreSQL.</summary>
public sealed class TwoShops : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("rebuild-branches-test-");
    private readonly ShopServer _quay;
    private readonly ShopServer _harbour;

    public TwoShops()
    {
        (_quay, _harbour) = (Server("quay"), Server("harbour"));
        (Quay, Harbour) = (_quay.CreateClient(), _harbour.CreateClient());
    }

    /// <summary>The shop that opens.</summary>
    public HttpClient Quay { get; }

    /// <summary>The shop that reads.</summary>
    public HttpClient Harbour { get; }

    public Task<HttpClient> ClientOfQuay(Scope scope) => _quay.ClientOf(scope);

    public async ValueTask DisposeAsync()
    {
        Quay.Dispose();
        Harbour.Dispose();
        await _quay.DisposeAsync();
        await _harbour.DisposeAsync();
        _quay.Drop();
        _folder.Delete(recursive: true);
    }

    private ShopServer Server(string shop) => ShopServer.Over(_folder).With("Rebuild:Shop", shop);
}
