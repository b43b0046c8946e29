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
        var builder = WebApplication.CreateSlimBuilder(args);
        builder.AddRebuild();
        var app = builder.Build();
        app.UsePipeline();
        app.MapHomePage();
        app.MapBenchPage();
        app.MapUnitPage();
        app.MapShopPage();
        app.MapRecordPage();
        app.MapStartPage();
        app.MapProblemPages();
        app.MapHealth();
        app.MapEvents();
        app.MapDrawings();
        app.MapFamilies();
        app.MapRejudgements();
        app.MapUnits();
        app.MapComponents();
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
        app.MapMeasuringCalculations();
        app.MapClearanceCalculations();
        app.MapMechanicsCalculations();
        app.MapHistory();
        app.MapAudit();
        app.MapBackups();
        return app;
    }
}
