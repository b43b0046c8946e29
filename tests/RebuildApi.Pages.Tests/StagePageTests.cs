using Microsoft.Playwright;

namespace RebuildApi.Pages.Tests;

/// <summary>The gates, the signatures and the photos of a gearbox, on its pages.</summary>
public sealed class StagePageTests
{
    [InChromiumFact]
    public async Task A_gearbox_passes_its_first_gates_on_the_page_with_what_could_not_be_had_said_why_and_goes_back_with_a_reason()
    {
        await using var shop = await LiveShop.Open();
        await shop.TakeIn("u1");
        var page = await AtUnit(shop, "u1");
        await Expect(page, "The owner's complaint");
        await page.GetByRole(AriaRole.Button, new() { Name = "On to: Before stripping" }).ClickAsync();
        await Assertions.Expect(page.Locator("#told")).ToContainTextAsync("Say why");
        await page.GetByLabel("Not to be had, because").FillAsync("Bought as a core.");
        await page.GetByRole(AriaRole.Button, new() { Name = "On to: Before stripping" }).ClickAsync();
        await Here(page, "Before stripping");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Bought as a core. (Wren)");
        await page.GetByLabel("Not to be had, because").FillAsync("It came in a box.");
        await page.GetByRole(AriaRole.Button, new() { Name = "On to: Teardown" }).ClickAsync();
        await Here(page, "Teardown");
        await Expect(page, "The gate opens when all of this is there");
        await page.Locator("summary").ClickAsync();
        await page.GetByLabel("Where to").SelectOptionAsync("pre-strip");
        await page.GetByLabel("Why").FillAsync("It was not looked at yet.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Record it" }).ClickAsync();
        await Here(page, "Before stripping");
        Assert.Empty(shop.Elsewhere);
    }

    [InChromiumFact]
    public async Task Interlock_and_function_test_are_signed_on_the_page_and_the_gearbox_is_handed_over_with_its_record()
    {
        await using var shop = await LiveShop.Open();
        await DemoShop.Play(shop.Http);
        await DemoShop.Go(shop.Http, "final-test");
        var page = await AtUnit(shop, "sl-1047");
        foreach (var check in new[] { "Interlock", "Function test" })
        {
            await page.GetByLabel("What is signed for", new() { Exact = true }).SelectOptionAsync(new SelectOptionValue { Label = check });
            await page.GetByRole(AriaRole.Button, new() { Name = "It passed" }).ClickAsync();
            await Assertions.Expect(page.GetByRole(AriaRole.Rowheader, new() { Name = check, Exact = true })).ToBeVisibleAsync();
        }

        await DemoShop.Go(shop.Http, "handed-over");
        await page.GotoAsync(shop.Address + "/units/sl-1047/record");
        foreach (var said in new[] { "Interlock", "Function test", "Wren, bench-1", "Over a signature: A trial.", "Bram", "Kept at hand-over", "Plug-in brackenmere-4", "These answers advise" })
            await Expect(page, said);
    }

    [InChromiumFact]
    public async Task A_photo_is_put_beside_a_finding_from_the_tablet_and_one_that_is_too_big_is_refused_with_the_limit()
    {
        await using var shop = await LiveShop.Open();
        await shop.TakeIn("u1");
        var page = await shop.Bench();
        await page.GotoAsync(shop.Address + "/bench/u1");
        await page.Locator("#person").FillAsync("Wren");
        await page.Locator("#bench").FillAsync("bench-1");
        await page.Locator("#parts button:has(> span:text-is('Third gear'))").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "pits one can see" }).ClickAsync();
        var photo = page.Locator("#part input[type=file]");
        await Assertions.Expect(photo).ToHaveAttributeAsync("capture", "environment");
        await Expect(page, "up to 16 MiB each");
        await photo.SetInputFilesAsync(new FilePayload { Name = "flank.png", MimeType = "image/png", Buffer = await page.ScreenshotAsync() });
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "Photo 1" })).ToBeVisibleAsync();
        var finding = Assert.Single(await shop.Items("/v1/units/u1/findings"))!;
        var kept = Assert.Single(await shop.Items("/v1/units/u1/attachments"))!;
        Assert.Equal(((string)finding["id"]!, "Wren"), ((string)kept["finding"]!, (string)kept["person"]!));
        await page.Locator("#part input[type=file]").SetInputFilesAsync(new FilePayload { Name = "big.png", MimeType = "image/png", Buffer = new byte[(16 << 20) + 1] });
        await Assertions.Expect(page.Locator("#heard")).ToContainTextAsync("up to 16 MiB");
        Assert.Single(await shop.Items("/v1/units/u1/attachments"));
    }

    [InChromiumFact]
    public async Task The_head_of_each_page_says_who_is_signed_in_and_signs_out()
    {
        await using var shop = await LiveShop.Open();
        await shop.TakeIn("u1");
        var page = await shop.Bench();
        foreach (var path in new[] { "/", "/shop", "/bench/u1", "/units/u1", "/units/u1/record", "/addresses", "/problems", "/sign-in" })
        {
            await page.GotoAsync(shop.Address + path);
            await Assertions.Expect(page.Locator("header .caller")).ToHaveTextAsync("tests");
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await Assertions.Expect(page.Locator("header").GetByRole(AriaRole.Link, new() { Name = "Sign in" })).ToBeVisibleAsync();
    }

    private static async Task<IPage> AtUnit(LiveShop shop, string unit)
    {
        var page = await shop.Bench();
        await page.GotoAsync($"{shop.Address}/units/{unit}");
        await page.Locator("#person").FillAsync("Wren");
        await page.Locator("#bench").FillAsync("bench-1");
        await page.Locator("#bench").BlurAsync();
        return page;
    }

    private static Task Expect(IPage page, string words) => Assertions.Expect(page.Locator("main")).ToContainTextAsync(words);

    private static Task Here(IPage page, string stage) => Assertions.Expect(page.Locator("[aria-current=step]")).ToContainTextAsync(stage);
}
