using RebuildApi.Contracts;

namespace RebuildApi.Engine.Families;

/// <summary>A series has members, thinnest first, each thicker than nothing, and is used by some clearance.</summary>
internal static class SeriesCheck
{
    public static void Run(Family family, FamilyReport report)
    {
        var used = family.Loops.SelectMany(l => l.Terms).Select(t => t.Of).OfType<OfSeries>().Select(s => s.Series).ToHashSet(StringComparer.Ordinal);
        foreach (var series in family.Series)
        {
            var field = $"series[{series.Id}]";
            report.Require(!series.Members.IsEmpty, $"{field}.members", "series-empty", "A series needs members.");
            report.Require(series.Members.All(m => m.Thickness > Length.Zero), $"{field}.members", "thickness-range", "A piece is thicker than nothing.");
            report.Require(series.Tolerance >= Length.Zero, $"{field}.tolerance", "tolerance-range", "A tolerance is not negative.");
            report.Require(series.Members.Zip(series.Members.Skip(1)).All(p => p.First.Thickness < p.Second.Thickness), $"{field}.members", "series-order", "Members go from the thinnest to the thickest.");
            if (!used.Contains(series.Id))
                report.Doubt(field, "series-unused", "No clearance is set with it.");
        }
    }
}
