using Microsoft.Playwright;
using RebuildApi.Server.Wire;

namespace RebuildApi.Pages.Tests;

/// <summary>A person who works a page by keyboard alone: nothing is clicked, and the focus is moved by the Tab key only.</summary>
internal sealed class Keys(IPage page)
{
    /// <summary>The row of what stands in a question that the page asks.</summary>
    public const string Asked = "asked";

    private const string Focused =
        """
        () => {
          const e = document.activeElement;
          return [e.id, (e.labels?.[0]?.innerText ?? e.getAttribute('aria-label') ?? e.innerText ?? '').trim(), e.tagName, e.closest('dialog') ? 'asked' : e.closest('[data-row]')?.dataset.row ?? '', typeof current === 'string' ? current : ''];
        }
        """;

    /// <summary>How often Tab was pressed.</summary>
    public int Tabs { get; private set; }

    public Task Type(string text) => page.Keyboard.TypeAsync(text);

    public Task Press(string key) => page.Keyboard.PressAsync(key);

    /// <summary>What has the focus.</summary>
    public async Task<Focus> Here() => await page.EvaluateAsync<string[]>(Focused) is [var id, var name, var tag, var row, var place] ? new(id, name, tag, row, place) : throw new InvalidOperationException("Nothing has the focus.");

    /// <summary>Tabs on until something has the focus; never more than so many steps. False when a question came up on the way.</summary>
    public async Task<bool> To(Func<Focus, bool> wanted, int most = 60)
    {
        for (var i = 0; i <= most; i++)
        {
            var here = await Here();
            if (wanted(here))
                return true;
            if (here.Row == Asked && here.Tag != "H2" && i > 3)
                return false;
            await Press("Tab");
            Tabs++;
        }

        throw new InvalidOperationException($"{most} steps of Tab led to {(await Here()).Name} and not to what was wanted.");
    }

    public Task<bool> ToId(string id, int most = 60) => To(f => f.Id == id, most);

    public Task<bool> ToName(string name, int most = 60) => To(f => f.Name == name, most);
}

/// <summary>What has the focus.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Tag">What it is.</param>
/// <param name="Row">The row of the sheet that it belongs to.</param>
/// <param name="Place">The part that the bench shows.</param>
internal sealed record Focus(string Id, string Name, string Tag, string Row, string Place);
