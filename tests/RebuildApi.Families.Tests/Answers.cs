using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Judging;

namespace RebuildApi.Families.Tests;

/// <summary>Looking things up in a judgement.</summary>
internal static class Answers
{
    public static PairingVerdict Pairing(this Judgement judgement, string rule) => judgement.Pairings.Single(p => p.Rule == rule);

    public static ClearanceAnswer Clearance(this Judgement judgement, string loop) => judgement.Clearances.Single(c => c.Verdict.Subject == loop);

    public static PartAnswer Part(this Judgement judgement, string position) => judgement.Parts.First(p => p.Position == position);

    public static Verdict Characteristic(this Judgement judgement, string at) => judgement.Parts.SelectMany(p => p.Verdicts).Single(v => v.Subject == at);

    public static IEnumerable<string> Codes(this PairingVerdict verdict) => verdict.Reasons.Select(r => r.Code);

    public static IEnumerable<string> Explains(this Judgement judgement, string symptom) =>
        judgement.Complaint.Single(c => c.Symptom.Symptom == symptom).Explanations.Select(e => e.Cause.Id);

    public static string AdviceText(this PartAnswer part) => string.Join(" ", part.Advice.Select(a => a.In("en")));
}
