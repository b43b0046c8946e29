using System.CommandLine;
using System.Globalization;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using RebuildApi.Server.Access;
using RebuildApi.Server.Commands;
using RebuildApi.Storage;

namespace RebuildApi.Server.Demo;

/// <summary><c>demo [--once] [--port N]</c>: starts the service on a fresh folder, plays the demo teardown over HTTP, prints the answers, and serves on.</summary>
public static class DemoCommand
{
    /// <summary>The command.</summary>
    public static Command Make()
    {
        var once = new Option<bool>("--once") { Description = "Leave after the answers." };
        var port = new Option<ushort>("--port") { Description = "Where to listen on 127.0.0.1; a free port when not said.", HelpName = "number" };
        var command = new ToldCommand("demo", "Starts the service on a fresh folder, plays the teardown of an invented gearbox over HTTP, prints the answers, and serves on.", """
            Examples:
              demo --once
              demo --port 5280
            """)
        {
            once, port,
        };
        command.SetAction((asked, _) => Run(asked.GetValue(once), asked.GetValue(port)));
        return command;
    }

    /// <summary>Runs the demo.</summary>
    /// <returns>0 when every request was answered; 1 when one was refused.</returns>
    private static async Task<int> Run(bool once, int port)
    {
        var folder = Directory.CreateTempSubdirectory("rebuild-demo-");
        try
        {
            await using var app = RebuildApplication.Create(
            [
                $"--Rebuild:DataFolder={folder.FullName}",
                "--Rebuild:Database=",
                $"--Rebuild:Listen=http://127.0.0.1:{port.ToString(CultureInfo.InvariantCulture)}",
                "--Logging:LogLevel:Default=Warning",
            ]);
            var secret = await TokenDesk.Issue(app.Services.GetRequiredService<IStore>(), new NewToken("demo", Scope.Administrator), TimeProvider.System);
            await app.StartAsync();
            var answered = await Play(AddressOf(app), secret, Console.Out);
            if (!once)
            {
                Console.WriteLine($"Serving on {AddressOf(app)} until Ctrl+C. Open this address to be signed in, or look at {AddressOf(app)}docs");
                Console.WriteLine($"  {SignInLink.Of(AddressOf(app).ToString(), secret)}");
                Console.WriteLine($"  export TOKEN={secret}");
                await app.WaitForShutdownAsync();
            }

            await app.StopAsync();
            return answered ? 0 : 1;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Plays the teardown against a running service and prints the answers.</summary>
    /// <returns>Whether every request was answered.</returns>
    public static async Task<bool> Play(Uri address, string token, TextWriter output)
    {
        using var http = new HttpClient { BaseAddress = address };
        http.DefaultRequestHeaders.Authorization = new("Bearer", token);
        var teardown = Teardown.Load();
        await output.WriteLineAsync("Saltmarsh Lane Gearboxes, three benches. " + teardown.Note + Environment.NewLine);
        if (!await new TeardownPlayer(http, output).Play(teardown))
            return false;
        await new DemoReport(http, output).Print(teardown.Unit);
        var shop = Teardown.Shop();
        await output.WriteLineAsync(Environment.NewLine + shop.Note);
        return await new TeardownPlayer(http, output).Play(shop) && await new PlanReport(http, output).Print(shop.Unit);
    }

    private static Uri AddressOf(WebApplication app) =>
        new(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First().TrimEnd('/') + "/");
}
