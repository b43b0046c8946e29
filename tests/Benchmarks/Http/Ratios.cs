namespace RebuildApi.Benchmarks.Http;

/// <summary>Two figures measured turn about, and their ratio.</summary>
internal static class Ratios
{
    /// <summary>Measures both so many times; says the medians, and the median of the ratios.</summary>
    /// <param name="what">What is measured.</param>
    /// <param name="runs">How often.</param>
    /// <param name="goal">The ratio to reach.</param>
    /// <param name="ours">Ours, so many a second.</param>
    /// <param name="ceiling">The ceiling, so many a second.</param>
    public static async Task<string> Of(string what, int runs, double goal, Func<Task<double>> ours, Func<Task<double>> ceiling)
    {
        var measured = new List<(double Ours, double Ceiling)>();
        for (var run = 0; run < runs; run++)
        {
            var top = await ceiling();
            measured.Add((await ours(), top));
        }

        var (mine, best, ratio) = (Median(measured.Select(m => m.Ours)), Median(measured.Select(m => m.Ceiling)), Median(measured.Select(m => m.Ours / m.Ceiling)));
        return FormattableString.Invariant($"{what}: {mine:F0}/s, ceiling {best:F0}/s, ratio {ratio:F2} (goal {goal:F2})");
    }

    /// <summary>The middle one.</summary>
    public static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted[sorted.Length / 2];
    }
}

/// <summary>A folder that goes with its owner.</summary>
internal sealed class Scratch : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("rebuild-benchmark-");

    /// <summary>Where it is.</summary>
    public string Path => _folder.FullName;

    /// <inheritdoc/>
    public void Dispose() => _folder.Delete(recursive: true);
}
