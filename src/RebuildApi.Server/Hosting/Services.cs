using Microsoft.AspNetCore.Http.Timeouts;
using Microsoft.Extensions.Options;
using RebuildApi.Engine.Families;
using RebuildApi.PluginHost;
using RebuildApi.Server.Access;
using RebuildApi.Server.Backups;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Attachments;
using RebuildApi.Server.Composition.Customers;
using RebuildApi.Server.Composition.Labels;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Composition.Stages;
using RebuildApi.Server.Errors;
using RebuildApi.Server.OpenApi;
using RebuildApi.Server.Requests.Shapes;
using RebuildApi.Server.Results;
using RebuildApi.Server.Webhooks;
using RebuildApi.Storage;

namespace RebuildApi.Server;

/// <summary>What the service is made of.</summary>
public static class Services
{
    // Far more than a shop has benches and programs; a guard against one that opens and never closes.
    private const int MostConnections = 2000;

    /// <summary>Registers everything.</summary>
    public static void AddRebuild(this WebApplicationBuilder builder)
    {
        var options = SettingsCheck.Read(builder.Configuration);
        builder.WebHost.ListenAsSet(options);
        // The server would quote a header line that it can't read, and a token may stand in it.
        builder.Logging.AddFilter("Microsoft.AspNetCore.Server.Kestrel.BadRequests", LogLevel.None);
        var services = builder.Services;
        services.Configure<ServerOptions>(builder.Configuration.GetSection(ServerOptions.Section));
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton<IIdSource, SortableIds>();
        services.AddSingleton<ShapeBook>();
        services.AddSingleton<IStore>(s => Stores.Open(StoreOf(s.GetRequiredService<IOptions<ServerOptions>>().Value, s.GetRequiredService<TimeProvider>())));
        services.AddSingleton<IPluginCatalog>(s => PluginCatalog.Open(PluginsOf(s.GetRequiredService<IOptions<ServerOptions>>().Value, s.GetRequiredService<TimeProvider>())));
        services.AddAccess();
        services.AddHostedService<DropWatching>();
        services.AddSingleton<Pages.Tongues>();
        services.AddSingleton<FamilyBook>();
        services.AddSingleton<Bench>();
        services.AddSingleton<JudgementCache>();
        services.AddSingleton<AnswerShelf>();
        services.AddSingleton<Judging>();
        services.AddSingleton<Pages.PaperDesk>();
        services.AddSingleton<Pages.PlanSection>();
        services.AddSingleton<DecisionDesk>();
        services.AddSingleton<Rejudging>();
        services.AddSingleton<EditionDesk>();
        services.AddSingleton(s => new AttachmentFolder(s.GetRequiredService<IOptions<ServerOptions>>().Value.Attachments));
        services.AddSingleton<AttachmentDesk>();
        services.AddSingleton<LabelDesk>();
        services.AddSingleton<StageDesk>();
        services.AddSingleton<StageSheet>();
        services.AddSingleton<PlanDesk>();
        services.AddSingleton<ShelfAllocation>();
        services.AddSingleton<DiagnosisDesk>();
        services.AddSingleton<ShopHistory>();
        services.AddSingleton<StationHistory>();
        services.AddSingleton<WornParts>();
        services.AddSingleton<ICandidateSource, PartsOfUnits>();
        services.AddSingleton<ICandidateSource, PartsOnShelf>();
        services.AddSingleton<ICandidateSource, PartsToOrder>();
        services.AddSingleton<CandidateSearch>();
        services.AddSingleton<Checks.CheckDesk>();
        services.AddSingleton<CalibrationDesk>();
        services.AddSingleton<StudyDesk>();
        services.AddSingleton<PolicyIntake>();
        services.AddSingleton<ComebackDesk>();
        services.AddSingleton<ComebackHistory>();
        services.AddSingleton<SettlingSheet>();
        services.AddSingleton<InstrumentRecall>();
        services.AddSingleton<BackupDesk>();
        services.AddSingleton(s => new OldCopies(s.GetRequiredService<BackupDesk>().Shelf, options.DataFolder, options.BackupsKept));
        services.AddSingleton<ErasureDesk>();
        services.AddHostedService<SettingsRecord>();
        services.AddHostedService<BackupSchedule>();
        services.AddHostedService<ErasedSweep>();
        services.AddHostedService<ApprovalsOfOthers>();
        services.AddWebhooks();
        services.AddSystemd();
        services.AddWindowsService();
        services.AddTelemetry(options.TelemetryTo);
        services.Configure<HostOptions>(o => o.ShutdownTimeout = TimeSpan.FromSeconds(options.StopSeconds));
        services.AddDocument();
        // What a person looks at comes in the first round trip; nothing secret stands in a page, so its length gives nothing away.
        services.AddResponseCompression(o => o.MimeTypes = ["text/html", Pages.Drawn.Lines]);
        services.Configure<RouteHandlerOptions>(o => o.ThrowOnBadRequest = true);
        services.AddRequestTimeouts(o => o.DefaultPolicy = TimeoutOf(options));
    }

    private static void AddAccess(this IServiceCollection services)
    {
        services.AddSingleton(s => new TokensAsked(s.GetRequiredService<IOptions<ServerOptions>>().Value.AsksForTokens));
        services.AddSingleton<Func<IStore>>(s => s.GetRequiredService<IStore>);
        services.AddSingleton<TokenBook>();
        services.AddSingleton<WrongTokens>();
        services.AddSingleton<LastUses>();
        services.AddSingleton(new OwnConsole(Console.Out));
        services.AddHostedService(s => s.GetRequiredService<LastUses>());
        services.AddHostedService<FirstToken>();
        services.AddHostedService<LanWarning>();
    }

    private static void ListenAsSet(this ConfigureWebHostBuilder web, ServerOptions options)
    {
        web.UseUrls(options.Listen);
        web.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxConcurrentConnections = MostConnections;
        });
        if (options.Certificate is null)
            return;
        var certificate = Certificate.Read(options);
        web.UseKestrelHttpsConfiguration();
        web.ConfigureKestrel(kestrel => kestrel.ConfigureHttpsDefaults(https => https.ServerCertificate = certificate));
    }

    private static StoreOptions StoreOf(ServerOptions options, TimeProvider time)
    {
        Directory.CreateDirectory(options.DataFolder);
        return Records.Of(options, time);
    }

    /// <summary>Where plug-ins lie and who is trusted.</summary>
    public static PluginHostOptions PluginsOf(ServerOptions options, TimeProvider time)
    {
        var usual = PluginHostOptions.Beside(AppContext.BaseDirectory, options.DataFolder, FamilyCheck.Check) with
        {
            CheckUnproven = LoadCheck.Check,
            CheckEdition = typeof(LoadCheck).Module.ModuleVersionId.ToString("N"),
            Time = time,
            Worker = WorkerCommand.Of(typeof(Services).Assembly, RebuildApplication.WorkerVerb),
        };
        return usual with
        {
            PluginFolders = options.PluginFolder is { } folder ? [folder, Path.Combine(options.DataFolder, "plugins")] : usual.PluginFolders,
            FamilyFolders = options.FamilyFolder is { } families ? [families] : usual.FamilyFolders,
            ApprovedLists = options.ApprovedPlugins is { } list ? [list] : usual.ApprovedLists,
        };
    }

    private static RequestTimeoutPolicy TimeoutOf(ServerOptions options) => new()
    {
        Timeout = TimeSpan.FromSeconds(options.RequestSeconds),
        WriteTimeoutResponse = http => ProblemWriter.Write(http, new ProblemException(Problems.Timeout, "The time allowed for this request ran out.")),
    };
}
