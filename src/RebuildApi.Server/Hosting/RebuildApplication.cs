using Microsoft.Extensions.Configuration.Json;
using RebuildApi.Server.Endpoints;
using RebuildApi.Server.Pages;

namespace RebuildApi.Server;

/// <summary>The whole service: what it is made of, in which order a request passes through it, and what it answers to.</summary>
public static class RebuildApplication
{
    /// <summary>The argument that makes this program a worker for one plug-in's code.</summary>
    public const string WorkerVerb = "plugin-worker";

    /// <summary>Makes the service, ready to run.</summary>
    public static WebApplication Create(string[] args)
    {
        var builder = Builder(args);
        builder.AddRebuild();
        var app = builder.Build();
        app.UsePipeline();
        app.MapHomePage();
        app.MapBenchPage();
        app.MapUnitPage();
        app.MapShopPage();
        app.MapPaperPages();
        app.MapLabelPage();
        app.MapStartPage();
        app.MapSignIn();
        app.MapProblemPages();
        app.MapHealth();
        app.MapEvents();
        app.MapDrawings();
        app.MapPapers();
        app.MapFamilies();
        app.MapRejudgements();
        app.MapUnits();
        app.MapStages();
        app.MapKeptJudgements();
        app.MapAttachments();
        app.MapLabels();
        app.MapComponents();
        app.MapPartHistory();
        app.MapMeasurements();
        app.MapFindings();
        app.MapTrials();
        app.MapAnswers();
        app.MapDecisions();
        app.MapSelections();
        app.MapDiagnosis();
        app.MapLearning();
        app.MapLoosePairings();
        app.MapCandidates();
        app.MapRates();
        app.MapParts();
        app.MapStock();
        app.MapSharings();
        app.MapOpenedShops();
        app.MapPlans();
        app.MapKit();
        app.MapQuotes();
        app.MapInvoiceLines();
        app.MapReservations();
        app.MapWork();
        app.MapChecks();
        app.MapInstruments();
        app.MapInstrumentRecords();
        app.MapPolicy();
        app.MapComebacks();
        app.MapPlugins();
        app.MapWebhooks();
        app.MapDeliveries();
        app.MapTokens();
        app.MapMeasuringCalculations();
        app.MapClearanceCalculations();
        app.MapMechanicsCalculations();
        app.MapHistory();
        app.MapAudit();
        app.MapBackups();
        app.MapCustomers();
        return app;
    }

    /// <summary>The settings that the service would run with, for commands that work beside it.</summary>
    /// <exception cref="SettingsException">Some can't be used.</exception>
    public static ServerOptions Settings(string[] args) => SettingsCheck.Read(Builder(args).Configuration);

    // The settings file beside the program stands below one in the folder it is started in, and both below the environment and the arguments.
    private static WebApplicationBuilder Builder(string[] args)
    {
        var builder = WebApplication.CreateSlimBuilder(args);
        builder.Configuration.Sources.Insert(0, new JsonConfigurationSource { Path = Path.Combine(AppContext.BaseDirectory, "appsettings.json"), Optional = true }.Resolved());
        return builder;
    }

    private static JsonConfigurationSource Resolved(this JsonConfigurationSource source)
    {
        source.ResolveFileProvider();
        return source;
    }
}
