using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using RebuildApi.PluginHost;
using RebuildApi.Server.Access;
using RebuildApi.Storage;
using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Kit;

/// <summary>
/// The whole service in memory over a data folder of its own, which goes with it; over a schema of its own beside that when the tests are run against PostgreSQL.
/// </summary>
public sealed class ShopServer : WebApplicationFactory<Program>
{
    public const string Family = "brackenmere-4";

    private readonly DirectoryInfo _folder;
    private readonly bool _keepsFolder;
    private readonly TempSchema? _schema;
    private readonly Dictionary<string, string> _settings = [];
    private TimeProvider? _clock;
    private Func<StoreOptions, StoreOptions>? _opening;
    private readonly LosableCatalog _catalog = new(ShippedPlugins.Catalog);

    private IStore? _store;
    private bool _outOfTime;

    public ShopServer()
        : this(null)
    {
    }

    private ShopServer(DirectoryInfo? folder)
    {
        (_folder, _keepsFolder) = (folder ?? Directory.CreateTempSubdirectory("rebuild-server-test-"), folder is not null);
        _schema = TempSchema.Of(_folder);
    }

    /// <summary>The administrator's token that every client carries unless it is made without; empty when the service asks for none.</summary>
    public string Token { get; private set; } = "";

    public static ShopServer Open() => new();

    /// <summary>Over a data folder that stays when the service goes, so that another can go on with it.</summary>
    public static ShopServer Over(DirectoryInfo folder) => new(folder);

    /// <summary>On other records.</summary>
    public ShopServer On(IStore store)
    {
        _store = store;
        return this;
    }

    public ShopServer With(string setting, string value)
    {
        _settings[setting] = value;
        return this;
    }

    /// <summary>With a clock that stands until it is moved.</summary>
    public ShopServer At(TimeProvider clock)
    {
        _clock = clock;
        return this;
    }

    /// <summary>Over a database that is opened in another manner than usual.</summary>
    public ShopServer OpenedAs(Func<StoreOptions, StoreOptions> change)
    {
        _opening = change;
        return this;
    }

    /// <summary>Whose requests are all out of time before they are looked at.</summary>
    public ShopServer OutOfTime()
    {
        _outOfTime = true;
        return this;
    }

    /// <summary>Where the database is.</summary>
    public StoreOptions Database => new(Path.Combine(DataFolder, "shop.db"), TimeProvider.System)
    {
        Database = _schema?.Connection,
        Shop = _settings.GetValueOrDefault("Rebuild:Shop", "main"),
    };

    /// <summary>The shop's data folder.</summary>
    public string DataFolder => _folder.FullName;

    /// <summary>Does something to the database behind the service's back.</summary>
    [System.Diagnostics.CodeAnalysis.SuppressMessage("Security", "CA2100", Justification = "Tests write the words themselves.")]
    public void Meddle(string sql)
    {
        if (_schema is not null)
        {
            _schema.Meddle(sql);
            return;
        }

        using var connection = new SqliteConnection($"Data Source={Path.Combine(DataFolder, "shop.db")};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    /// <summary>A client without a token, that takes and keeps no cookies and follows no redirection.</summary>
    public HttpClient CreateStranger()
    {
        var http = CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = false, HandleCookies = false });
        http.DefaultRequestHeaders.Authorization = null;
        return http;
    }

    /// <summary>A client whose token has another scope.</summary>
    public async Task<HttpClient> ClientOf(Scope scope) => ClientWith(await Issue(new NewToken(scope.Word() + "-1", scope)));

    /// <summary>A client with this token.</summary>
    public HttpClient ClientWith(string token)
    {
        var http = CreateStranger();
        http.DefaultRequestHeaders.Authorization = new("Bearer", token);
        return http;
    }

    /// <summary>Issues a token that counts at once, as one does that is issued over HTTP.</summary>
    public async Task<string> Issue(NewToken asked)
    {
        var secret = await TokenDesk.Issue(Services.GetRequiredService<IStore>(), asked, Services.GetRequiredService<TimeProvider>());
        Services.GetRequiredService<TokenBook>().Forget();
        return secret;
    }

    /// <summary>From now on no plug-in is there.</summary>
    public void LosePlugins() => _catalog.Lost = true;

    /// <summary>From now on another edition of a shipped family is loaded.</summary>
    public void LoadNewer(LoadedFamily edition) => _catalog.Newer = edition;

    /// <summary>Takes in the unit that the examples speak of, with the instrument and the receiver that addresses name.</summary>
    public async Task<HttpClient> WithUnit(string unit = "u1")
    {
        var http = CreateClient();
        await http.Make("/v1/instruments", """
            { "id": "mic-25", "name": "Micrometer", "type": "outside-micrometer", "resolution": { "value": 0.001, "unit": "mm" }, "limitOfError": { "value": 0.004, "unit": "mm" } }
            """);
        await http.Make("/v1/webhooks", """{ "id": "w1", "name": "Nobody", "address": "http://127.0.0.1:9/", "kinds": ["comeback"], "person": "Ada" }""");
        await http.Make("/v1/units", $$"""{ "id": "{{unit}}", "tag": "T-1", "family": "{{Family}}", "person": "Ada" }""");
        return http;
    }

    /// <summary>Puts a unit at a stage past all gates, for tests of what follows from where it is.</summary>
    public async Task PutAt(string unit, string stage)
    {
        var nothing = new StoredAnswer(204, "", ReadOnlyMemory<byte>.Empty, System.Collections.Immutable.ImmutableSortedDictionary<string, string>.Empty);
        await Services.GetRequiredService<IStore>().Write(new WriteRequest("test", "test", null, "", DryRun: false), session =>
        {
            session.Change(session.Unit(unit)! with { Stage = stage }, null);
            return nothing;
        }, CancellationToken.None);
    }

    protected override void ConfigureClient(HttpClient client)
    {
        base.ConfigureClient(client);
        if (Token.Length > 0)
            client.DefaultRequestHeaders.Authorization = new("Bearer", Token);
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("Rebuild:DataFolder", _folder.FullName);
        builder.UseSetting("Rebuild:Database", _schema?.Connection ?? "");
        builder.UseSetting("Logging:LogLevel:Default", "Warning");
        builder.UseSetting("Rebuild:PlanSeconds", "55");
        foreach (var (name, value) in _settings)
            builder.UseSetting(name, value);
        builder.ConfigureTestServices(services =>
        {
            services.AddSingleton<IPluginCatalog>(_catalog);
            services.Insert(0, ServiceDescriptor.Singleton<IHostedService>(s => new FirstIn(s, Database, token => Token = token)));
            if (_outOfTime)
                services.LetTimeRunOut();
            if (_clock is not null)
                services.AddSingleton(_clock);
            if (_store is { } store)
                services.AddSingleton(store);
            if (_opening is not null)
                services.AddSingleton<IStore>(_ => Stores.Open(_opening(Database)));
        });
    }

    /// <summary>Drops what a server over a folder that stays leaves in a database.</summary>
    public void Drop() => _schema?.Dispose();

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (!disposing || _keepsFolder)
            return;
        Clear();
        _schema?.Dispose();
    }

    // The plug-in host clears its shadow copies at the same moment, so a file may go between being listed and being deleted.
    private void Clear()
    {
        for (var tries = 0; tries < 10 && Directory.Exists(_folder.FullName); tries++)
        {
            try
            {
                _folder.Delete(recursive: true);
            }
            catch (IOException)
            {
            }
        }
    }
}

/// <summary>Issues the tests' token before anything else starts, so that the service finds one and prints none.</summary>
internal sealed class FirstIn(IServiceProvider services, StoreOptions database, Action<string> hand) : IHostedService
{
    private const string Name = "tests";

    public async Task StartAsync(CancellationToken cancellationToken)
    {
        if (!services.GetRequiredService<TokensAsked>().Yes)
            return;
        var secret = Secret.New();
        hand(secret);
        if (await Try(() => services.GetRequiredService<IStore>().Write(TokenDesk.ByCommand("tests"), session => Renewed(session, secret), cancellationToken)))
            return;
        // Records that the service may only read are written beside it, as the command would; those that can't be used at all have no token, so any is as good.
        await Try(async () =>
        {
            await using var beside = Stores.Open(database);
            await beside.Write(TokenDesk.ByCommand("tests"), session => Renewed(session, secret), cancellationToken);
        });
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    private static async Task<bool> Try(Func<Task> work)
    {
        try
        {
            await work();
            return true;
        }
        catch (StorageUnavailableException)
        {
            return false;
        }
    }

    // A data folder that is gone on with has the token already: it stays the same one, with another secret.
    private StoredAnswer Renewed(IWriteSession session, string secret)
    {
        if (session.Find<AccessToken>(Name) is { } stands)
            session.Put(stands with { SecretSha256 = Secret.HashOf(secret) }, stands.Version);
        else
            TokenDesk.Issue(session, new NewToken(Name, Scope.Administrator), secret, TokenDesk.Console, services.GetRequiredService<TimeProvider>().GetUtcNow());
        return StoredAnswer.Nothing;
    }
}

/// <summary>How tests speak to the service.</summary>
public static class Speaking
{
    /// <summary>Posts JSON with a key, and reads the JSON that comes back; fails when it was refused.</summary>
    public static async Task<JsonObject> Make(this HttpClient http, string path, string json)
    {
        using var answer = await http.Send(HttpMethod.Post, path, json, ("Idempotency-Key", path + json.GetHashCode(StringComparison.Ordinal)));
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return (await answer.Content.ReadFromJsonAsync<JsonObject>())!;
    }

    public static async Task<JsonObject> Read(this HttpClient http, string path)
    {
        using var answer = await http.GetAsync(path);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return (await answer.Content.ReadFromJsonAsync<JsonObject>())!;
    }

    public static Task<HttpResponseMessage> Send(this HttpClient http, HttpMethod method, string path, string? body, params (string Name, string Value)[] headers) =>
        http.Send(method, path, body is null ? null : Encoding.UTF8.GetBytes(body), "application/json", headers);

    public static Task<HttpResponseMessage> Send(
        this HttpClient http, HttpMethod method, string path, byte[]? body, string? type, params (string Name, string Value)[] headers)
    {
        var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative)) { Content = body is null ? null : new ByteArrayContent(body) };
        if (body is not null && type is not null)
            request.Content!.Headers.TryAddWithoutValidation("Content-Type", type);
        foreach (var (name, value) in headers)
        {
            if (name == "Host")
                request.Headers.Host = value;
            else
                request.Headers.TryAddWithoutValidation(name, value);
        }

        return http.SendAsync(request);
    }

    /// <summary>The problem that an answer is; fails when it is none, or one outside the catalogue.</summary>
    public static async Task<JsonObject> Problem(this HttpResponseMessage answer)
    {
        var text = await answer.Content.ReadAsStringAsync();
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var problem = JsonNode.Parse(text)!.AsObject();
        Assert.Equal((int)answer.StatusCode, (int)problem["status"]!);
        Assert.Contains((string)problem["code"]!, Errors.Problems.All.Select(p => p.Code));
        Assert.Equal("/problems/" + problem["code"], (string)problem["type"]!);
        Assert.NotEmpty((string)problem["traceId"]!);
        return problem;
    }
}
