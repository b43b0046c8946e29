using Microsoft.Playwright;

namespace RebuildApi.Pages.Tests;

/// <summary>A bench in a real browser. Benches wait for what the page says, never for a time.</summary>
public sealed class BenchPageTests
{
    [InChromiumFact]
    public async Task A_gearbox_is_taken_in_and_its_first_parts_are_entered_by_keyboard_alone()
    {
        await using var shop = await LiveShop.Open();
        var page = await shop.Bench();
        await page.GotoAsync(shop.Address);
        await page.Locator("#tag").FocusAsync();
        await page.Keyboard.TypeAsync("SL-2001");
        await page.Locator("#person").FocusAsync();
        await page.Keyboard.TypeAsync("Wren");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/bench/*");
        await page.Locator("#bench").FocusAsync();
        await page.Keyboard.TypeAsync("bench-1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Next missing" }).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        var first = await page.Locator("#now").InnerTextAsync();
        var sound = page.GetByRole(AriaRole.Button, new() { Name = "Sound", Exact = true });
        await sound.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#heard")).ToContainTextAsync("Taken: " + first);
        var unit = new Uri(page.Url).Segments[^1];
        var finding = Assert.Single(await shop.Items($"/v1/units/{unit}/findings"));
        Assert.True((bool)finding!["sound"]!);
        Assert.Equal("Wren", (string)finding["person"]!);
        Assert.Empty(shop.Elsewhere);
    }

    [InChromiumFact]
    public async Task A_reading_in_the_wrong_unit_is_asked_about_at_once_and_read_again_supersedes_it()
    {
        await using var shop = await LiveShop.Open();
        await shop.TakeIn("u1");
        var page = await AtBench(shop, "u1", "bench-1");
        await Choose(page, "Third gear");
        await Read(page, "47.6900", "in");
        await Assertions.Expect(page.Locator("#ask")).ToContainTextAsync("check the unit");
        await page.GetByRole(AriaRole.Button, new() { Name = "Read it again" }).ClickAsync();
        await Read(page, "47.6900", "mm");
        await Assertions.Expect(page.Locator("#heard")).ToContainTextAsync("47.6900 mm");
        var stands = Assert.Single(await shop.Items("/v1/units/u1/measurements"));
        Assert.Contains("47.6900", stands!["readings"]!.ToJsonString(), StringComparison.Ordinal);
        Assert.Equal("mm", (string)stands["readings"]![0]!["value"]!["unit"]!);
        Assert.NotNull(stands["supersedes"]);
    }

    [InChromiumFact]
    public async Task Two_benches_work_on_one_gearbox_and_each_sees_what_the_other_found()
    {
        await using var shop = await LiveShop.Open();
        await shop.TakeIn("u1");
        var (one, two) = (await AtBench(shop, "u1", "bench-1"), await AtBench(shop, "u1", "bench-2"));
        await Choose(one, "Third gear");
        await Choose(two, "Third gear");
        await one.GetByRole(AriaRole.Button, new() { Name = "Sound", Exact = true }).ClickAsync();
        await Assertions.Expect(two.Locator("#part li").First).ToContainTextAsync("Sound");
    }

    [InChromiumFact]
    public async Task What_is_entered_without_a_connection_is_shown_as_not_sent_and_sent_once_when_it_is_back()
    {
        await using var shop = await LiveShop.Open();
        await shop.TakeIn("u1");
        var page = await AtBench(shop, "u1", "bench-1");
        await Choose(page, "Third gear");
        await page.Context.SetOfflineAsync(true);
        await Read(page, "47.6900", "mm");
        await Assertions.Expect(page.Locator("#unsent")).ToContainTextAsync("1 not yet sent");
        await Choose(page, "Second gear");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sound", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("#unsent")).ToContainTextAsync("2 not yet sent");
        Assert.Empty(await shop.Items("/v1/units/u1/measurements"));
        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator("#unsent")).ToBeEmptyAsync();
        Assert.Single(await shop.Items("/v1/units/u1/measurements"));
        Assert.Single(await shop.Items("/v1/units/u1/findings"));
    }

    [InChromiumFact]
    public async Task No_page_has_anything_wider_than_a_phone_or_an_unnamed_field_or_button()
    {
        await using var shop = await LiveShop.Open();
        await shop.TakeIn("u1");
        var page = await shop.Bench(390, 844, ColorScheme.Dark);
        foreach (var path in new[] { "/", "/shop", "/bench/u1", "/units/u1", "/units/u1/record", "/units/u1/assembly" })
        {
            await page.GotoAsync(shop.Address + path);
            Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= 390, path);
            var unnamed = await page.EvaluateAsync<int>(
                "[...document.querySelectorAll('input,select,textarea,button')].filter(e => !e.labels?.length && !e.getAttribute('aria-label') && !e.textContent.trim()).length");
            Assert.Equal(0, unnamed);
            Assert.Equal(1, await page.EvaluateAsync<int>("document.querySelectorAll('h1').length"));
        }
    }

    private static async Task<IPage> AtBench(LiveShop shop, string unit, string bench)
    {
        var page = await shop.Bench();
        await page.GotoAsync($"{shop.Address}/bench/{unit}");
        await page.Locator("#person").FillAsync("Wren");
        await page.Locator("#bench").FillAsync(bench);
        return page;
    }

    private static async Task Choose(IPage page, string part)
    {
        await page.Locator($"#parts button:has(> span:text-is('{part}'))").ClickAsync();
        await Assertions.Expect(page.Locator("#now")).ToHaveTextAsync(part);
    }

    private static async Task Read(IPage page, string value, string unit)
    {
        var form = page.Locator("#part form").Filter(new() { HasTextRegex = new System.Text.RegularExpressions.Regex("[Bb]ore") }).First;
        await form.GetByRole(AriaRole.Button, new() { Name = unit, Exact = true }).ClickAsync();
        await form.Locator("input").First.FillAsync(value);
        await form.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
    }
}
