using RebuildApi.Contracts;

namespace RebuildApi.Engine.Families;

/// <summary>Ids are well formed and unique within their lists.</summary>
internal static class IdCheck
{
    public static void Run(Family family, FamilyReport report)
    {
        report.Require(IsId(family.Version.Id), "version.id", "id-form", Form(family.Version.Id));
        report.Require(IsSemVer(family.Version.SemVer), "version.semVer", "version-form", $"'{family.Version.SemVer}' is not a version like 1.0.0.");
        foreach (var (list, ids) in Lists(family))
            List(list, [.. ids], report);
        foreach (var kind in family.Kinds)
        {
            List($"kinds[{kind.Id}].characteristics", [.. kind.Characteristics.Select(c => c.Id)], report, IsFeatureId);
            List($"kinds[{kind.Id}].attributes", [.. kind.Attributes.Select(a => a.Id)], report, IsFeatureId);
            List($"kinds[{kind.Id}].toothSets", [.. kind.ToothSets.Select(t => t.Id)], report, id => id.Length == 0 || IsId(id));
            foreach (var attribute in kind.Attributes)
                List($"kinds[{kind.Id}].attributes[{attribute.Id}].values", [.. attribute.Values.Select(v => v.Id)], report);
        }

        foreach (var series in family.Series)
            List($"series[{series.Id}].members", [.. series.Members.Select(m => m.Id)], report);
    }

    private static IEnumerable<(string List, IEnumerable<string> Ids)> Lists(Family f) =>
    [
        ("materials", f.Materials.Select(x => x.Id)),
        ("kinds", f.Kinds.Select(x => x.Id)),
        ("positions", f.Positions.Select(x => x.Id)),
        ("loops", f.Loops.Select(x => x.Id)),
        ("series", f.Series.Select(x => x.Id)),
        ("operations", f.Operations.Select(x => x.Id)),
        ("pairings", f.Pairings.Select(x => x.Id)),
        ("sets", f.Sets.Select(x => x.Id)),
        ("meshes", f.Meshes.Select(x => x.Id)),
        ("hooks", f.Hooks.Select(x => x.Id)),
        ("symptoms", f.Symptoms.Select(x => x.Id)),
        ("causes", f.Causes.Select(x => x.Id)),
        ("tests", (f.Tests ?? []).Select(x => x.Id)),
        ("fasteners", (f.Fasteners ?? []).Select(x => x.Id)),
        ("lubricants", (f.Lubricants ?? []).Select(x => x.Id)),
        ("gates", (f.Gates ?? []).Select(x => x.Id)),
    ];

    private static void List(string list, IReadOnlyList<string> ids, FamilyReport report, Func<string, bool>? isGood = null)
    {
        foreach (var id in ids.Where(id => !(isGood ?? IsId)(id)))
            report.Error($"{list}[{id}]", "id-form", Form(id));
        foreach (var twice in ids.GroupBy(id => id, StringComparer.Ordinal).Where(g => g.Count() > 1))
            report.Error($"{list}[{twice.Key}]", "id-twice", $"'{twice.Key}' is declared {twice.Count()} times.");
    }

    private static string Form(string id) => $"'{id}' is not an id: lower-case letters and digits, in words joined by hyphens.";

    /// <summary>Lower-case letters and digits in words joined by hyphens, at most 64 long.</summary>
    private static bool IsId(string id) => id.Length is > 0 and <= 64 && id.Split('-').All(w => w.Length > 0 && w.All(c => c is (>= 'a' and <= 'z') or (>= '0' and <= '9')));

    /// <summary>An id, or a feature and an id joined by a point: <c>dog.form</c>.</summary>
    private static bool IsFeatureId(string id) => id.Split('.') is { Length: <= 2 } parts && parts.All(IsId);

    private static bool IsSemVer(string version) => version.Split('.') is { Length: 3 } parts && parts.All(p => p.Length is > 0 and < 10 && p.All(char.IsAsciiDigit));
}
