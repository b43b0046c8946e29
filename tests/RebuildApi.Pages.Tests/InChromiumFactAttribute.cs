namespace RebuildApi.Pages.Tests;

/// <summary>A fact that needs the system's Chromium; skipped, visibly, where there is none.</summary>
public sealed class InChromiumFactAttribute : FactAttribute
{
    public InChromiumFactAttribute()
    {
        if (Chromium is null)
            Skip = "No Chromium on this machine: install the system's package chromium.";
    }

    public static string? Chromium { get; } = new[] { "/usr/bin/chromium", "/usr/bin/chromium-browser" }.FirstOrDefault(File.Exists);
}
