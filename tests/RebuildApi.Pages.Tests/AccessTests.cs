using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace RebuildApi.Pages.Tests;

/// <summary>Each page of a full gearbox held against WCAG 2.2 AA by axe, in light and dark, and against gloves.</summary>
public sealed class AccessTests
{
    // The target of a finger in a glove: 44 CSS px (WCAG 2.2, 2.5.5); links inside a sentence are excepted there.
    private const double Finger = 44;
    private static readonly string[] Pages =
        ["/", "/shop", "/bench/sl-1047", "/units/sl-1047", "/units/sl-1047/record", "/units/sl-1047/assembly", "/units/sl-1047/quote", "/units/sl-1047/teardown", "/sign-in", "/addresses", "/problems"];

    [InChromiumFact]
    public async Task Axe_finds_nothing_serious_on_any_page_in_light_or_dark()
    {
        await using var shop = await LiveShop.Open();
        await DemoShop.Play(shop.Http);
        var found = new List<string>();
        foreach (var colours in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            var page = await shop.Bench(colours: colours);
            foreach (var path in Pages)
            {
                await page.GotoAsync(shop.Address + path);
                var result = await page.RunAxe();
                found.AddRange(result.Violations.Where(v => v.Impact is "serious" or "critical")
                    .Select(v => $"{colours} {path} {v.Id}: {string.Join(' ', v.Nodes.Take(3).Select(n => n.Html))}"));
            }
        }

        Assert.Empty(found);
        Assert.Empty(shop.Elsewhere);
    }

    [InChromiumFact]
    public async Task Everything_to_be_hit_on_the_bench_is_as_big_as_a_finger_in_a_glove()
    {
        await using var shop = await LiveShop.Open();
        await shop.TakeIn("u1");
        var page = await shop.Bench();
        foreach (var path in new[] { "/", "/bench/u1", "/units/u1" })
        {
            await page.GotoAsync(shop.Address + path);
            var small = await page.EvaluateAsync<string[]>(
                $$"""
                [...document.querySelectorAll('button, input, select, textarea, a.button, header.top a, summary')]
                  .map(e => [e, e.getBoundingClientRect()]).filter(([, b]) => b.width > 0 && (b.height < {{Finger}} || b.width < {{Finger}})).map(([e]) => e.outerHTML)
                """);
            Assert.Empty(small);
        }
    }
}
