using RebuildApi.Server;
using RebuildApi.Server.Endpoints;
using RebuildApi.Server.Pages;

var builder = WebApplication.CreateSlimBuilder(args);
builder.AddRebuild();

var app = builder.Build();
app.UsePipeline();
app.MapStartPage();
app.MapProblemPages();
app.MapHealth();
app.MapFamilies();
app.MapUnits();
app.MapComponents();
app.MapMeasurements();
app.MapFindings();
app.MapInstruments();
app.MapPlugins();
app.Run();
