using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using RebuildApi.Server.Access;
using RebuildApi.Storage;

namespace RebuildApi.Pages.Tests;

/// <summary>The real service on a real port over a data folder of its own, and a real browser that may speak to it alone.</summary>
public sealed class LiveShop : IAsyncDisposable
{
    private readonly DirectoryInfo _folder;
    private readonly WebApplication _app;
    private readonly IPlaywright _playwright;
    private readonly IBrowser _browser;

    private LiveShop(DirectoryInfo folder, WebApplication app, string token, IPlaywright playwright, IBrowser browser)
    {
        (_folder, _app, Token, _playwright, _browser) = (folder, app, token, playwright, browser);
        Http = new HttpClient { BaseAddress = new Uri(Address) };
        Http.DefaultRequestHeaders.Authorization = new("Bearer", token);
    }

    /// <summary>The administrator's token.</summary>
    public string Token { get; }

    public string Address => _app.Urls.First();

    public HttpClient Http { get; }

    /// <summary>Addresses that a page asked for elsewhere than at this service.</summary>
    public List<string> Elsewhere { get; } = [];

    public static async Task<LiveShop> Open()
    {
        var folder = Directory.CreateTempSubdirectory("rebuild-pages-test-");
        var app = RebuildApplication.Create(["--Rebuild:DataFolder", folder.FullName, "--Rebuild:Listen", "http://127.0.0.1:0", "--Rebuild:PlanSeconds", "40", "--Logging:LogLevel:Default", "Warning"]);
        var token = await TokenDesk.Issue(app.Services.GetRequiredService<IStore>(), new NewToken("tests", Scope.Administrator), TimeProvider.System);
        await app.StartAsync();
        var playwright = await Playwright.CreateAsync();
        var browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = InChromiumFactAttribute.Chromium,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
        return new LiveShop(folder, app, token, playwright, browser);
    }

    /// <summary>A bench: a tablet of its own, signed in.</summary>
    public async Task<IPage> Bench(int width = 800, int height = 1180, ColorScheme colours = ColorScheme.Light)
    {
        var page = await Stranger(width, height, colours);
        await page.Context.AddCookiesAsync([new()
        {
            Name = "rebuild-" + new Uri(Address).Port.ToString(System.Globalization.CultureInfo.InvariantCulture),
            Value = Token, Url = Address, HttpOnly = true, SameSite = SameSiteAttribute.Strict,
        }]);
        return page;
    }

    /// <summary>A tablet of its own that nobody has signed in.</summary>
    public async Task<IPage> Stranger(int width = 800, int height = 1180, ColorScheme colours = ColorScheme.Light)
    {
        var context = await _browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, ColorScheme = colours });
        var page = await context.NewPageAsync();
        page.Request += (_, r) =>
        {
            if (!r.Url.StartsWith(Address, StringComparison.Ordinal))
                Elsewhere.Add(r.Url);
        };
        page.SetDefaultTimeout(90_000);
        return page;
    }

    public async Task TakeIn(string unit)
    {
        using var answer = await Http.PostAsJsonAsync("/v1/units", new { id = unit, tag = unit.ToUpperInvariant(), family = "brackenmere-4", person = "Wren" });
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
    }

    public async Task<JsonArray> Items(string path) => (await Http.GetFromJsonAsync<JsonObject>(path))!["items"]!.AsArray();

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        await _browser.DisposeAsync();
        _playwright.Dispose();
        await _app.StopAsync();
        await _app.DisposeAsync();
        _folder.Delete(recursive: true);
    }
}
