using Microsoft.Playwright;

namespace RebuildApi.Pages.Tests;

/// <summary>Signing in and out in a real browser, and what becomes of entries while nobody is signed in.</summary>
public sealed class SignInTests
{
    [InChromiumFact]
    public async Task A_link_with_the_token_behind_its_hash_signs_in_once_and_leaves_no_token_in_the_address()
    {
        await using var shop = await LiveShop.Open();
        await shop.TakeIn("u1");
        var page = await shop.Stranger();
        await page.GotoAsync(shop.Address + "/bench/u1");
        Assert.Equal("/sign-in?next=%2Fbench%2Fu1", new Uri(page.Url).PathAndQuery);
        await page.GotoAsync($"{shop.Address}/sign-in#{shop.Token}");
        await page.WaitForURLAsync(shop.Address + "/");
        await page.GotoAsync(shop.Address + "/bench/u1");
        await Assertions.Expect(page.Locator("#now")).ToBeVisibleAsync();
        Assert.DoesNotContain("rb_", await page.EvaluateAsync<string>("document.cookie + location.href"), StringComparison.Ordinal);
        Assert.Empty(shop.Elsewhere);
    }

    [InChromiumFact]
    public async Task The_form_says_what_is_wrong_and_leads_back_to_where_one_was_going()
    {
        await using var shop = await LiveShop.Open();
        await shop.TakeIn("u1");
        var page = await shop.Stranger();
        await page.GotoAsync(shop.Address + "/units/u1");
        await page.Locator("#token").FillAsync("rb_wrong");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#said")).ToContainTextAsync("No such token");
        await page.Locator("#token").FillAsync(shop.Token);
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync(shop.Address + "/units/u1");
        await page.GotoAsync(shop.Address + "/sign-in");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await Assertions.Expect(page.Locator("header").GetByRole(AriaRole.Link, new() { Name = "Sign in" })).ToBeVisibleAsync();
        await page.GotoAsync(shop.Address + "/units/u1");
        Assert.Equal("/sign-in", new Uri(page.Url).AbsolutePath);
    }

    [InChromiumFact]
    public async Task The_sign_in_page_sends_nobody_to_another_site()
    {
        await using var shop = await LiveShop.Open();
        var page = await shop.Stranger();
        await page.GotoAsync($"{shop.Address}/sign-in?next=%2F%2Felsewhere.example%2F#{shop.Token}");
        await page.WaitForURLAsync(shop.Address + "/");
        Assert.Empty(shop.Elsewhere);
    }

    [InChromiumFact]
    public async Task What_is_entered_while_nobody_is_signed_in_waits_and_is_sent_once_when_somebody_is()
    {
        await using var shop = await LiveShop.Open();
        await shop.TakeIn("u1");
        var page = await shop.Bench();
        await page.GotoAsync(shop.Address + "/bench/u1");
        await page.Locator("#person").FillAsync("Wren");
        await page.Locator("#bench").FillAsync("bench-1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Next missing" }).ClickAsync();
        await page.Context.ClearCookiesAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Sound", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("#unsent")).ToContainTextAsync("1 not yet sent");
        await page.GetByRole(AriaRole.Link, new() { Name = "Sign in again" }).ClickAsync();
        Assert.Empty(await shop.Items("/v1/units/u1/findings"));
        await page.Locator("#token").FillAsync(shop.Token);
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync(shop.Address + "/bench/u1");
        await Assertions.Expect(page.Locator("#unsent")).ToBeEmptyAsync();
        Assert.Single(await shop.Items("/v1/units/u1/findings"));
    }
}
