using System.Globalization;

namespace RebuildApi.PluginHost.Tests;

/// <summary>Which processes run on this machine (Linux: <c>/proc</c>).</summary>
internal static class Processes
{
    /// <summary>Ids of those whose command line has a word in it.</summary>
    public static IReadOnlyList<int> With(string word) => [.. Directory.EnumerateDirectories("/proc")
        .Select(folder => Path.GetFileName(folder))
        .Where(name => name.All(char.IsAsciiDigit) && CommandLineOf(name).Contains(word, StringComparison.Ordinal))
        .Select(name => int.Parse(name, CultureInfo.InvariantCulture))];

    /// <summary>Waits until none is left, but not for ever.</summary>
    public static async Task<bool> AllGone(string word)
    {
        for (var look = 0; look < 300; look++)
        {
            if (With(word).Count == 0)
                return true;
            await Task.Delay(100);
        }

        return false;
    }

    private static string CommandLineOf(string process)
    {
        try
        {
            return File.ReadAllText($"/proc/{process}/cmdline");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }
}
