using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Diagnosis;
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
    /// <param name="standings">How characteristics and clearances stand to their limits, by their subject; what is open is left out.</param>
    public static ImmutableArray<ComplaintAnswer> Judge(UnitView view, IReadOnlyDictionary<string, Standing> standings)
    {
        var shown = view.Family.Family.Causes
            .Select(cause => (Cause: cause, Signs: SignsOf(cause, view, standings)))
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

    private static ImmutableArray<string> SignsOf(Cause cause, UnitView view, IReadOnlyDictionary<string, Standing> standings) =>
        [.. cause.Signs.Select(sign => Seen(sign, view, standings)).OfType<string>()];

    private static string? Seen(Sign sign, UnitView view, IReadOnlyDictionary<string, Standing> standings) => sign switch
    {
        AttributeSign a when AnyAt(a.Position, view, c => view.AttributeOf(c, a.Attribute) is { } v && a.Values.Contains(v)) =>
            $"{a.Position}: {a.Attribute} {string.Join(" or ", a.Values)}",
        DamageSign d when AnyAt(d.Position, view, c => HasDamage(d, view.FindingsOf(c))) => $"{d.Position}: {string.Join(" or ", d.Classes)}",
        VerdictSign v when standings.TryGetValue(v.Subject, out var standing) && IsBeyond(v.Side, standing) => v.Subject,
        _ => null,
    };

    // A loose clearance is no sign of one set tight; beyond a limit that is not said is no sign of either side.
    private static bool IsBeyond(LimitSide? side, Standing standing) => side switch
    {
        LimitSide.Below => standing == Standing.Below,
        LimitSide.Above => standing == Standing.Above,
        _ => standing != Standing.Within,
    };

    private static bool AnyAt(string position, UnitView view, Func<Component, bool> holds) => view.At(position).Any(p => holds(p.Component));

    private static bool HasDamage(DamageSign sign, IEnumerable<Finding> findings) => findings
        .Select(f => f.Observation)
        .OfType<DamageSeen>()
        .Any(d => sign.Classes.Contains(d.Class) && (sign.Place == "*" || sign.Place == d.Place));
}
