using System.Collections.Immutable;
using System.Text.Json;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Families;

/// <summary>What comes out of a worked case. Only what the case expects is judged, by the same judges as a whole unit, so that a family of many small cases is run quickly.</summary>
internal sealed class CaseAnswers
{
    private readonly EstimateBook _book;
    private readonly ILookup<string, PairingVerdict> _byHooks;

    /// <summary>Looks at one case.</summary>
    public CaseAnswers(GoldenCase golden, FamilyIndex index, IHooks hooks)
    {
        // Nobody asks a worked case for the hash of its inputs.
        _book = new EstimateBook(new UnitView(golden.Snapshot, index, inputsSha256: ""));
        var asked = index.Family.Hooks.Where(h => golden.Expected.Any(e => Speaks(h, e.Subject)));
        _byHooks = asked.SelectMany(h => hooks.Run(h, golden.Snapshot)).ToLookup(v => v.Rule, StringComparer.Ordinal);
    }

    /// <summary>Whether a rule is a hook's own: it bears the hook's id, or begins with it and a slash.</summary>
    public static bool Speaks(HookScope hook, string rule) => rule == hook.Id || rule.StartsWith(hook.Id + "/", StringComparison.Ordinal);

    /// <summary>The answers about a subject; none when nothing is said of it.</summary>
    public ImmutableArray<CaseAnswer> Of(string subject)
    {
        var family = _book.View.Family;
        if (family.Loops.TryGetValue(subject, out var loop))
            return [Answer(subject, ClearanceJudge.JudgeGap(loop, _book).Verdict)];
        if (family.Pairings.TryGetValue(subject, out var rule))
            return [Answer(PairingJudge.Judge(rule, _book))];
        return _byHooks.Contains(subject) ? [.. _byHooks[subject].Select(Answer)] : OfPart(subject);
    }

    private ImmutableArray<CaseAnswer> OfPart(string subject)
    {
        if (subject.Split('#', 2)[0].Split('/', 2) is not [var position, var characteristic] || _book.View.Family.CharacteristicAt(new Address(position, characteristic)) is not { } c)
            return [];
        var verdicts = _book.View.At(position).Where(p => CharacteristicJudge.SubjectOf(p, c) == subject).Select(p => CharacteristicJudge.Judge(p, c, _book));
        return [.. verdicts.OfType<Verdict>().Select(v => Answer(RuleOf(position, c), v))];
    }

    /// <summary>A limit belongs to the kind, wherever the part sits, unless the position narrows it.</summary>
    private string RuleOf(string position, Characteristic characteristic) =>
        _book.View.Family.Positions[position] is var at && at.Overrides.Any(o => o.Characteristic == characteristic.Id && o.Service is not null)
            ? CaseRules.AtPosition(position, characteristic.Id)
            : CaseRules.OfKind(at.Kind, characteristic.Id);

    private static CaseAnswer Answer(string rule, Verdict verdict) => new(Kebab(verdict.Outcome.ToString()), rule, verdict switch
    {
        { Outcome: Outcome.Conforming } => "inside",
        { Outcome: Outcome.Nonconforming, Value.Value: { } value, Against: { } against } => against.High is { } high && value.InSi > high.InSi ? "above" : "below",
        _ => "",
    });

    private static CaseAnswer Answer(PairingVerdict verdict) => new(Kebab(verdict.Outcome.ToString()), verdict.Rule, verdict.Outcome switch
    {
        Compatibility.Compatible => "holding",
        Compatibility.NotAssessed => "",
        _ => "broken",
    });

    /// <summary>The outcome as the contract writes it: <c>not-assessed</c>.</summary>
    private static string Kebab(string name) => JsonNamingPolicy.KebabCaseLower.ConvertName(name);
}

/// <summary>One answer to a worked case.</summary>
/// <param name="Outcome">Its word.</param>
/// <param name="Rule">The rule that was fired, by one of <see cref="CaseRules"/> or the id of a clearance or pairing.</param>
/// <param name="Side">The side it was fired on; empty when on none.</param>
internal sealed record CaseAnswer(string Outcome, string Rule, string Side);

/// <summary>What limits are called when it is counted which of them were fired.</summary>
internal static class CaseRules
{
    public static string OfKind(string kind, string characteristic) => $"kind {kind}/{characteristic}";

    public static string AtPosition(string position, string characteristic) => $"position {position}/{characteristic}";
}
