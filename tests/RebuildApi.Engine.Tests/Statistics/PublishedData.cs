using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Engine.Statistics;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Statistics;

/// <summary>The data files beside the tests; their sources stand in the README there.</summary>
internal static class PublishedData
{
    public static ImmutableArray<double> Column(string name) => [.. Lines(name).Select(Number)];

    public static ImmutableArray<ImmutableArray<double>> Rows(string name) => [.. Lines(name).Select(line => Numbers(line.Split(' ')))];

    public static ImmutableArray<GaugeReading> GaugeStudy() =>
    [
        .. Lines("GaugeStudy").Select(line => line.Split(' ')).SelectMany(words => Numbers(words[1..])
            .Select((value, part) => new GaugeReading(words[0][..1], $"part-{part + 1:00}", value))),
    ];

    private static ImmutableArray<double> Numbers(string[] words) => [.. words.Select(Number)];

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static string[] Lines(string name) => File.ReadAllLines(
        Repository.PathTo("tests", "RebuildApi.Engine.Tests", "Statistics", "Data", name + ".dat"));
}
