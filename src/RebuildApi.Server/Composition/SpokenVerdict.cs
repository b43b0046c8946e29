using System.Collections.Immutable;
using System.Text.Json;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Composition;

/// <summary>One verdict of a judgement, as far as two of them are compared.</summary>
/// <param name="Sort"><c>part</c>, <c>characteristic</c>, <c>clearance</c> or <c>pairing</c>.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Outcome">Its outcome word.</param>
/// <param name="Probability">Chance that the true value conforms, where there is a value.</param>
/// <param name="Reasons">Why, in words.</param>
public sealed record SpokenVerdict(string Sort, string Subject, string Outcome, double? Probability, ImmutableArray<string> Reasons)
{
    /// <summary>The verdicts of a judgement under the rules of a family.</summary>
    public static ImmutableArray<SpokenVerdict> Of(Judgement judgement, FamilyIndex family) =>
    [
        .. judgement.Parts.Select(p => new SpokenVerdict("part", Subjects.Of(p.Position, p.Index), Kebab.Of(p.Outcome), null, Words(p.Condition.Reasons, family))),
        .. judgement.Parts.SelectMany(p => p.Verdicts).Select(v => Of("characteristic", v, family)),
        .. judgement.Clearances.Select(c => Of("clearance", c.Verdict, family)),
        .. judgement.Pairings.Select(p => new SpokenVerdict("pairing", p.Rule, Kebab.Of(p.Outcome), null, Words(p.Reasons, family))),
    ];

    /// <summary>The verdicts of a judgement that was kept, as <see cref="JudgementWire"/> writes it.</summary>
    public static ImmutableArray<SpokenVerdict> Of(ReadOnlyMemory<byte> kept)
    {
        using var document = JsonDocument.Parse(kept);
        var root = document.RootElement;
        return
        [
            .. Items(root, "parts").Select(p => new SpokenVerdict("part", Text(p, "subject"), Text(p, "outcome"), null, Words(p.GetProperty("condition")))),
            .. Items(root, "parts").SelectMany(p => Items(p, "verdicts")).Select(v => Read("characteristic", Text(v, "subject"), v)),
            .. Items(root, "clearances").Select(c => Read("clearance", Text(c, "clearance"), c.GetProperty("verdict"))),
            .. Items(root, "pairings").Select(p => Read("pairing", Text(p, "pairing"), p)),
        ];
    }

    /// <summary>As it is answered.</summary>
    public SpokenWire Wire() => new(Outcome, Probability, Reasons);

    private static SpokenVerdict Of(string sort, Verdict verdict, FamilyIndex family) =>
        new(sort, verdict.Subject, Kebab.Of(verdict.Outcome), Numbers.Finite(verdict.Probability), Words(verdict.Reasons, family));

    private static SpokenVerdict Read(string sort, string subject, JsonElement verdict) =>
        new(sort, subject, Text(verdict, "outcome"), verdict.TryGetProperty("probability", out var p) && p.ValueKind == JsonValueKind.Number ? p.GetDouble() : null, Words(verdict));

    private static ImmutableArray<string> Words(ImmutableArray<Reason> reasons, FamilyIndex family) => [.. reasons.Select(family.Say)];

    private static ImmutableArray<string> Words(JsonElement verdict) => [.. Items(verdict, "reasons").Select(r => Text(r, "text"))];

    private static IEnumerable<JsonElement> Items(JsonElement of, string name) => of.TryGetProperty(name, out var list) ? list.EnumerateArray() : [];

    private static string Text(JsonElement of, string name) => of.GetProperty(name).GetString() ?? "";
}

/// <summary>A verdict that comes out otherwise.</summary>
/// <param name="Before">What was said; null when the old rules said nothing of it.</param>
/// <param name="After">What would be said; null when the new rules say nothing of it.</param>
public sealed record VerdictChange(SpokenVerdict? Before, SpokenVerdict? After)
{
    /// <summary>The verdicts whose outcomes differ, in the order of the first judgement, and then those that are new.</summary>
    public static ImmutableArray<VerdictChange> Between(ImmutableArray<SpokenVerdict> before, ImmutableArray<SpokenVerdict> after)
    {
        var (then, now) = (ByKey(before), ByKey(after));
        return
        [
            .. then.Where(b => now.GetValueOrDefault(b.Key)?.Outcome != b.Value.Outcome).Select(b => new VerdictChange(b.Value, now.GetValueOrDefault(b.Key))),
            .. now.Where(a => !then.ContainsKey(a.Key)).Select(a => new VerdictChange(null, a.Value)),
        ];
    }

    /// <summary>As it is answered.</summary>
    public VerdictChangeWire Wire()
    {
        var either = (After ?? Before)!;
        return new(either.Sort, either.Subject, Before?.Wire(), After?.Wire());
    }

    private static OrderedDictionary<(string, string), SpokenVerdict> ByKey(ImmutableArray<SpokenVerdict> verdicts)
    {
        var byKey = new OrderedDictionary<(string, string), SpokenVerdict>();
        foreach (var verdict in verdicts)
            byKey.TryAdd((verdict.Sort, verdict.Subject), verdict);
        return byKey;
    }
}
