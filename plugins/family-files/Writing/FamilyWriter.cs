using System.Text;
using System.Text.Json;
using FamilyFiles.Yaml;
using static FamilyFiles.Writing.Build;

namespace FamilyFiles.Writing;

/// <summary>Writes a family as a file that reads back as the same family; that is tried before the file is handed out.</summary>
internal static class FamilyWriter
{
    public static byte[] Write(Family family)
    {
        if (!family.Hooks.IsEmpty)
            throw new NotSupportedException("A rule in code can't be written into a file.");
        var file = Encoding.UTF8.GetBytes(NodeWriter.Write(Root(family)));
        var again = new FamilyFilesPlugin().Read(family.Version.Id, file);
        if (again.Family is null)
            throw new NotSupportedException("What was written does not read back: " + string.Join(" ", again.Diagnostics.Take(3).Select(d => $"{d.Field}: {d.Message}")));
        RequireSame(JsonSerializer.SerializeToElement(family, ContractJson.Default.Family), JsonSerializer.SerializeToElement(again.Family, ContractJson.Default.Family));
        return file;
    }

    private static MapNode Root(Family f)
    {
        var figures = Figures.For(f);
        var sources = new SourceNames(f);
        var shared = new SharedAttributes(f.Kinds);
        var parts = new PartWords(figures, sources, shared);
        var rules = new RuleWords(figures, sources);
        var building = new BuildingWords(parts);
        return Map(
            ("family", Say(f.Version.Id)),
            ("version", Say(f.Version.SemVer)),
            ("name", Words(f.Name, "family." + f.Version.Id)),
            ("sources", sources.Section()),
            ("materials", MapIf(f.Materials.Select(m => (m.Id, (Node?)parts.Material(m))))),
            ("attributes", MapIf(shared.All.Select(a => (a.Id, (Node?)PartWords.Attribute(a))))),
            ("kinds", Alike.Shortened(Map(f.Kinds.Select(k => (k.Id, (Node?)parts.Kind(k)))))),
            ("positions", Map(f.Positions.Select((p, i) => (p.Id, (Node?)parts.Position(p, i + 1))))),
            ("clearances", Alike.Shortened(MapIf(f.Loops.Select(l => (l.Id, (Node?)rules.Clearance(l)))))),
            ("series", MapIf(f.Series.Select(s => (s.Id, (Node?)parts.Series(s))))),
            ("operations", Alike.Shortened(MapIf(f.Operations.Select(o => (o.Id, (Node?)rules.Operation(o)))))),
            ("pairings", Alike.Shortened(MapIf(f.Pairings.Select(p => (p.Id, (Node?)rules.Pairing(p)))))),
            ("sets", MapIf(f.Sets.Select(s => (s.Id, (Node?)RuleWords.Set(s))))),
            ("meshes", MapIf(f.Meshes.Select(m => (m.Id, (Node?)RuleWords.Mesh(m))))),
            ("damage", List(f.Damage.Select(rules.Damage))),
            ("symptoms", MapIf(f.Symptoms.Select(s => (s.Id, (Node?)ComplaintWords.Symptom(s))))),
            ("causes", MapIf(f.Causes.Select(c => (c.Id, (Node?)ComplaintWords.Cause(c, sources))))),
            ("tests", MapIf((f.Tests ?? []).Select(t => (t.Id, (Node?)ComplaintWords.Test(t, sources))))),
            ("fasteners", MapIf((f.Fasteners ?? []).Select(x => (x.Id, (Node?)building.Fastener(x))))),
            ("lubricants", MapIf((f.Lubricants ?? []).Select(l => (l.Id, (Node?)building.Lubricant(l))))),
            ("gates", MapIf((f.Gates ?? []).Select(g => (g.Id, (Node?)BuildingWords.Gate(g))))),
            ("cautions", MapIf(f.Cautions.Select(c => (CautionId(c), (Node?)Words(c, "caution." + CautionId(c)))))),
            ("golden", Alike.Shortened(MapIf(f.Golden.Select(g => (g.Name, (Node?)CaseWords.Case(g, figures)))))));
    }

    private static string CautionId(Text caution) => caution.Key.StartsWith("caution.", StringComparison.Ordinal) ? caution.Key["caution.".Length..] : caution.Key;

    private static void RequireSame(JsonElement family, JsonElement again)
    {
        foreach (var section in family.EnumerateObject())
        {
            if (again.TryGetProperty(section.Name, out var other) && JsonElement.DeepEquals(section.Value, other))
                continue;
            var items = section.Value.ValueKind == JsonValueKind.Array && other.ValueKind == JsonValueKind.Array;
            var first = items ? section.Value.EnumerateArray().Zip(other.EnumerateArray()).FirstOrDefault(p => !JsonElement.DeepEquals(p.First, p.Second)).First : section.Value;
            var what = first.ValueKind == JsonValueKind.Undefined ? "their number" : first.GetRawText();
            throw new NotSupportedException($"A file can't say these {section.Name}: {(what.Length <= 400 ? what : what[..400])}");
        }
    }
}
