using Microsoft.Playwright;

namespace RebuildApi.Pages.Tests;

/// <summary>Each page of a full gearbox, as light and dark, tablet and phone; the pictures lie beside the tests to be looked at.</summary>
public sealed class PictureTests
{
    private static readonly string[] Pages =
    [
        "/", "/shop", "/bench/sl-1047", "/units/sl-1047", "/units/sl-1047/record", "/units/sl-1047/assembly", "/units/sl-1047/quote", "/units/sl-1047/teardown",
        "/units/sl-1047/labels", "/sign-in", "/addresses", "/problems", "/problems/gate-not-met",
    ];

    private static readonly (string Name, int Width, int Height, ColorScheme Colours)[] Screens =
    [
        ("tablet-light", 1024, 768, ColorScheme.Light), ("tablet-dark", 1024, 768, ColorScheme.Dark), ("phone-light", 390, 844, ColorScheme.Light), ("phone-dark", 390, 844, ColorScheme.Dark),
    ];

    // What sticks out on the right and is not inside something that scrolls by itself.
    private const string TooWide =
        """
        document.documentElement.scrollWidth <= innerWidth ? [] : [...document.querySelectorAll('main *, header *')]
          .filter(e => e.getBoundingClientRect().right > innerWidth + 1 && !e.closest('.scroll')).map(e => location.pathname + ': ' + e.outerHTML.slice(0, 200)).slice(0, 3)
        """;

    [InChromiumFact]
    public async Task No_page_of_a_full_gearbox_says_an_error_to_the_browser_or_asks_anything_elsewhere()
    {
        await using var shop = await LiveShop.Open();
        await DemoShop.Play(shop.Http);
        await DemoShop.Go(shop.Http, "final-test");
        await DemoShop.Sign(shop.Http, "interlock");
        await DemoShop.Label(shop.Http);
        foreach (var paper in new[] { "teardown", "assembly", "quote", "record" })
            await File.WriteAllBytesAsync(Path.Combine(Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "pictures")).FullName, paper + ".pdf"), await shop.Http.GetByteArrayAsync($"/v1/units/sl-1047/{paper}.pdf"));
        var errors = new List<string>();
        foreach (var (name, width, height, colours) in Screens)
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
                await answer!.FinishedAsync();
                Assert.True((await answer.Request.SizesAsync()).ResponseBodySize < 100_000, path);
                Assert.Empty(await page.EvaluateAsync<string[]>(TooWide));
                var file = Path.Combine(AppContext.BaseDirectory, "pictures", $"{name}{path.Replace('/', '-')}.png");
                await page.ScreenshotAsync(new() { Path = file, FullPage = true });
            }
        }

        Assert.Empty(errors);
        Assert.Empty(shop.Elsewhere);
    }
}
