namespace FamilyWords;

/// <summary>Words for complaints and what lies behind them.</summary>
internal static class SymptomWords
{
    public static Symptom Complaint(string id, string name, params string[] gears) => new(id, Text.English($"symptom.{id}", name), [.. gears]);

    public static Cause Because(string id, string name, double prior) => new(id, Text.English($"cause.{id}", name), prior, [], [], Judged);

    /// <summary>The complaint it brings, with the range that can be defended.</summary>
    public static Cause Brings(this Cause cause, string symptom, double low, double best, double high, string? gear = null) =>
        cause with { Explains = cause.Explains.Add(new SymptomLink(symptom, low, best, high, gear)) };

    public static Cause Shown(this Cause cause, string position, string attribute, params string[] values) =>
        cause with { Signs = cause.Signs.Add(new AttributeSign(position, attribute, [.. values])) };

    public static Cause Damaged(this Cause cause, string position, string place, params string[] damage) =>
        cause with { Signs = cause.Signs.Add(new DamageSign(position, [.. damage], place)) };

    /// <summary>A characteristic or clearance out of its limits.</summary>
    public static Cause OutOfLimits(this Cause cause, string subject) => cause with { Signs = cause.Signs.Add(new VerdictSign(subject)) };
}
