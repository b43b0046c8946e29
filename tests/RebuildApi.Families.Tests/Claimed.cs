using System.Text.Json.Nodes;
using RebuildApi.Checkers.Plans;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Planning;

namespace RebuildApi.Families.Tests;

/// <summary>What plans and judgements claim, in the checker's words.</summary>
internal static class Claimed
{
    public static PlanClaims By(Plan plan, Family family) => new(
        plan.Lines.ToDictionary(l => (l.Position, l.Members.IsEmpty && !IsPack(l.Position, family) ? l.Index : 0), l => l.Outcome),
        plan.Clearances.ToDictionary(c => c.Loop, c => (c.Outcome, (double?)c.Gap?.Nanometres)),
        plan.Pairings.Where(p => family.Pairings.Any(r => r.Id == p.Rule)).ToDictionary(p => p.Rule, p => p.Outcome));

    public static PlanClaims By(Judgement judgement, Family family) => new(
        judgement.Parts.ToDictionary(p => (p.Position, p.Index), p => p.Outcome),
        judgement.Clearances.ToDictionary(c => c.Verdict.Subject, c => (c.Verdict.Outcome, c.IsWithoutPieces ? null : (double?)(c.Combined.Value as Exact)?.Value.Nanometres)),
        judgement.Pairings.Where(p => family.Pairings.Any(r => r.Id == p.Rule)).ToDictionary(p => p.Rule, p => p.Outcome));

    /// <summary>A plan as it is answered over HTTP, where pairings that are simply compatible are not named.</summary>
    public static PlanClaims By(JsonNode plan, Family family) => new(
        plan["lines"]!.AsArray().ToDictionary(l => PlaceOf((string)l!["position"]!, family), l => Word<Outcome>(l!["outcome"])),
        plan["clearances"]!.AsArray().ToDictionary(c => (string)c!["clearance"]!, c => (Word<Outcome>(c!["outcome"]), c!["gap"] is { } gap ? (double)gap["value"]! * 1e6 : (double?)null)),
        plan["pairings"]!.AsArray().Where(p => family.Pairings.Any(r => r.Id == (string)p!["pairing"]!)).ToDictionary(p => (string)p!["pairing"]!, p => Word<Compatibility>(p!["outcome"])));

    private static (string, int) PlaceOf(string subject, Family family)
    {
        var (position, index) = subject.Split('#') is [var p, var i] ? (p, int.Parse(i, System.Globalization.CultureInfo.InvariantCulture)) : (subject, 1);
        return (position, IsPack(position, family) ? 0 : index);
    }

    private static bool IsPack(string position, Family family) => family.Loops.SelectMany(l => l.Terms).Any(t => t.Of is OfSeries s && s.Position == position);

    private static T Word<T>(JsonNode? word)
        where T : struct, Enum => Enum.Parse<T>(((string)word!).Replace("-", "", StringComparison.Ordinal), ignoreCase: true);
}
