using System.Globalization;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace RebuildApi.Server.Demo;

/// <summary><c>demo [--once] [--port N]</c>: starts the service on a fresh folder, plays the demo teardown over HTTP, prints the answers, and serves on.</summary>
public static class DemoCommand
{
    private const string Usage = "usage: demo [--once] [--port N]\n  --once  leave after the answers\n  --port  where to listen on 127.0.0.1; a free port when not said\n";

    /// <summary>Runs the demo.</summary>
    /// <returns>0 when every request was answered; 1 when one was refused; 2 when the arguments are not understood.</returns>
    public static async Task<int> Run(string[] args)
    {
        if (!TryRead(args, out var once, out var port))
        {
            await Console.Error.WriteAsync(Usage);
            return 2;
        }

        var folder = Directory.CreateTempSubdirectory("rebuild-demo-");
        try
        {
            await using var app = RebuildApplication.Create(
            [
                $"--Rebuild:DataFolder={folder.FullName}",
                $"--Rebuild:Listen=http://127.0.0.1:{port.ToString(CultureInfo.InvariantCulture)}",
                "--Logging:LogLevel:Default=Warning",
            ]);
            await app.StartAsync();
            var answered = await Play(AddressOf(app), Console.Out);
            if (!once)
            {
                Console.WriteLine($"Serving on {AddressOf(app)} until Ctrl+C; open it in a browser, or try {AddressOf(app)}docs");
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
    public static async Task<bool> Play(Uri address, TextWriter output)
    {
        using var http = new HttpClient { BaseAddress = address };
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

    private static bool TryRead(string[] args, out bool once, out int port)
    {
        (once, port) = (false, 0);
        for (var i = 0; i < args.Length; i++)
        {
            if (args[i] == "--once")
                once = true;
            else if (args[i] != "--port" || i + 1 == args.Length || !TryPort(args[++i], out port))
                return false;
        }

        return true;
    }

    private static bool TryPort(string text, out int port) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out port) && port <= 65535;
}
