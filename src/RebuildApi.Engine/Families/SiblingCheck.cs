using System.Globalization;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Families;

/// <summary>
/// Limits that are far from those of their siblings: the same feature of other kinds, called and read alike, and the pieces of a series. A wrong unit (25.4 times) or a
/// slipped point (10 times) shows so. Computed here, no source.
/// </summary>
internal static class SiblingCheck
{
    private const int FewestSiblings = 3;
    private const double Far = 8;

    /// <summary>Checks a family whose references resolve.</summary>
    public static void Run(Family family, FamilyReport report)
    {
        var sized = family.Kinds.SelectMany(k => k.Characteristics.Select(c => (Kind: k.Id, C: c, Size: Size(c)))).Where(x => x.Size > 0).ToList();
        foreach (var siblings in sized.GroupBy(x => (x.C.Id, Name: x.C.Name.In("en"))).Where(g => g.Count() >= FewestSiblings))
            Unlike([.. siblings], report);
        foreach (var series in family.Series)
            Members(series, family, report);
    }

    private static void Unlike(List<(string Kind, Characteristic C, double Size)> siblings, FamilyReport report)
    {
        var sizes = siblings.Select(s => s.Size).Order().ToList();
        var median = sizes[sizes.Count / 2];
        foreach (var (kind, c, size) in siblings.Where(s => s.Size > Far * median || s.Size * Far < median))
        {
            var times = (size > median ? size / median : median / size).ToString("0.#", CultureInfo.InvariantCulture);
            report.Doubt($"kinds[{kind}].characteristics[{c.Id}]", "limit-unlike-siblings", $"Its limits are {times} times {(size > median ? "larger" : "smaller")} than those of '{c.Id}' on other kinds: check the unit and the point.");
        }
    }

    /// <summary>A piece that exists must be one that its own kind would pass when new.</summary>
    private static void Members(Series series, Family family, FamilyReport report)
    {
        var drawing = family.Kinds.First(k => k.Id == series.Kind).Characteristics.First(c => c.Id == "thickness").New;
        foreach (var member in series.Members.Where(m => drawing is { Low: Exact or null, High: Exact or null } && !drawing.Contains(m.Thickness)))
            report.Doubt($"series[{series.Id}].members[{member.Id}]", "member-outside-limits", $"A new piece of {member.Thickness} would not pass the limits of '{series.Kind}' when new.");
    }

    /// <summary>The middle of the limits, taken as a size; 0 where there is none.</summary>
    private static double Size(Characteristic c) => (c.New ?? c.Service) is { } limits && c.Dimension == Dimension.Length && c.Report != Statistic.Spread
        ? Math.Abs(((limits.Low ?? limits.High)!.InSi + (limits.High ?? limits.Low)!.InSi) / 2)
        : 0;
}
