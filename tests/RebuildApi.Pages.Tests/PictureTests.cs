using System.Text;
using System.Text.Json.Nodes;
using Microsoft.Playwright;
using RebuildApi.TestKit;

namespace RebuildApi.Pages.Tests;

/// <summary>Each page of a full gearbox, as light and dark, tablet and phone; the pictures lie beside the tests to be looked at.</summary>
public sealed class PictureTests
{
    private static readonly string[] Pages = ["/", "/shop", "/bench/sl-1047", "/units/sl-1047", "/units/sl-1047/record", "/units/sl-1047/assembly"];

    [InChromiumFact]
    public async Task No_page_of_a_full_gearbox_says_an_error_to_the_browser_or_asks_anything_elsewhere()
    {
        await using var shop = await LiveShop.Open();
        await PlayTeardown(shop.Http);
        var errors = new List<string>();
        foreach (var (name, width, height, colours) in new[] { ("tablet", 820, 1180, ColorScheme.Light), ("phone", 390, 844, ColorScheme.Dark) })
        {
            var page = await shop.Bench(width, height, colours);
            page.Console += (_, said) =>
            {
                if (said.Type == "error")
                    errors.Add(said.Text);
            };
            foreach (var path in Pages)
            {
                var answer = await page.GotoAsync(shop.Address + path);
                Assert.True((await answer!.BodyAsync()).Length < 100_000, path);
                var file = Path.Combine(AppContext.BaseDirectory, "pictures", $"{name}{path.Replace('/', '-')}.png");
                await page.ScreenshotAsync(new() { Path = file });
            }
        }

        Assert.Empty(errors);
        Assert.Empty(shop.Elsewhere);
    }

    private static async Task PlayTeardown(HttpClient http)
    {
        var steps = JsonNode.Parse(await File.ReadAllTextAsync(Repository.PathTo("src/RebuildApi.Server/Demo/teardown.json")))!["steps"]!.AsArray();
        foreach (var step in steps.Where(s => (string?)s!["method"] == "POST"))
        {
            using var body = new StringContent(step!["body"]!.ToJsonString(), Encoding.UTF8, "application/json");
            body.Headers.ContentType!.CharSet = null;
            using var request = new HttpRequestMessage(HttpMethod.Post, new Uri((string)step["path"]!, UriKind.Relative)) { Content = body };
            request.Headers.Add("Idempotency-Key", "step-" + steps.IndexOf(step));
            using var answer = await http.SendAsync(request);
            Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        }
    }
}
