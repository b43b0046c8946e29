using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Reasons;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Complaints;

/// <summary>
/// Does what was found explain what the owner complained of? Each symptom is held against the signs of the family's causes. A cause that
/// brings only another symptom explains nothing, and the answer says so.
/// </summary>
public static class ComplaintJudge
{
    /// <summary>Judges every symptom of the complaint.</summary>
    /// <param name="view">The unit.</param>
    /// <param name="nonconforming">Subjects of characteristics and clearances that are nonconforming.</param>
    public static ImmutableArray<ComplaintAnswer> Judge(UnitView view, IReadOnlySet<string> nonconforming)
    {
        var shown = view.Family.Family.Causes
            .Select(cause => (Cause: cause, Signs: SignsOf(cause, view, nonconforming)))
            .Where(c => c.Signs.Length > 0)
            .ToImmutableArray();
        return [.. view.Snapshot.Complaint.Select(symptom => Answer(symptom, shown, view))];
    }

    private static ComplaintAnswer Answer(SymptomSeen symptom, ImmutableArray<(Cause Cause, ImmutableArray<string> Signs)> shown, UnitView view)
    {
        var explaining = shown
            .Where(c => c.Cause.Explains.Any(link => Brings(link, symptom)))
            .OrderByDescending(c => c.Cause.Explains.First(link => Brings(link, symptom)).Best)
            .Select(c => new Explanation(c.Cause, c.Signs))
            .ToImmutableArray();
        var name = view.Family.Family.Symptoms.FirstOrDefault(s => s.Id == symptom.Symptom)?.Name.In("en") ?? symptom.Symptom;
        var reasons = explaining.Length > 0
            ? explaining.Select(e => Because.Of("complaint-explained", symptom.Symptom, ("symptom", name), ("cause", e.Cause.Name.In("en")), ("signs", string.Join(", ", e.Signs))))
            : [NotExplained(symptom, name, shown)];
        return new ComplaintAnswer(symptom, explaining, [.. reasons]);
    }

    private static bool Brings(SymptomLink link, SymptomSeen symptom) =>
        link.Symptom == symptom.Symptom && (link.Gear is null || symptom.Gear is null || link.Gear == symptom.Gear);

    private static Reason NotExplained(SymptomSeen symptom, string name, ImmutableArray<(Cause Cause, ImmutableArray<string> Signs)> shown) => shown.IsEmpty
        ? Because.Of("complaint-not-explained", symptom.Symptom, ("symptom", name))
        : Because.Of(
            "complaint-not-explained-by",
            symptom.Symptom,
            ("symptom", name),
            ("found", string.Join("; ", shown.Select(c => c.Cause.Name.In("en")))));

    private static ImmutableArray<string> SignsOf(Cause cause, UnitView view, IReadOnlySet<string> nonconforming) =>
        [.. cause.Signs.Select(sign => Seen(sign, view, nonconforming)).OfType<string>()];

    private static string? Seen(Sign sign, UnitView view, IReadOnlySet<string> nonconforming) => sign switch
    {
        AttributeSign a when AnyAt(a.Position, view, c => view.AttributeOf(c, a.Attribute) is { } v && a.Values.Contains(v)) =>
            $"{a.Position}: {a.Attribute} {string.Join(" or ", a.Values)}",
        DamageSign d when AnyAt(d.Position, view, c => HasDamage(d, view.FindingsOf(c))) => $"{d.Position}: {string.Join(" or ", d.Classes)}",
        VerdictSign v when nonconforming.Contains(v.Subject) => v.Subject,
        _ => null,
    };

    private static bool AnyAt(string position, UnitView view, Func<Component, bool> holds) => view.At(position).Any(p => holds(p.Component));

    private static bool HasDamage(DamageSign sign, IEnumerable<Finding> findings) => findings
        .Select(f => f.Observation)
        .OfType<DamageSeen>()
        .Any(d => sign.Classes.Contains(d.Class) && (sign.Place == "*" || sign.Place == d.Place));
}
