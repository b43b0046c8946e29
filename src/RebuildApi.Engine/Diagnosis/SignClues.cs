using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>The signs of a family's causes, each once however many causes share it, and its tests.</summary>
internal static class SignClues
{
    public static ImmutableArray<(Clue Clue, Sign Sign)> Signs(Family family)
    {
        var spoken = new Spoken(new FamilyIndex(family), "en");
        return
        [
            .. family.Causes
                .SelectMany((cause, i) => cause.Signs.Select(sign => (Id: IdOf(sign), Sign: sign, Cause: i)))
                .GroupBy(s => s.Id, StringComparer.Ordinal)
                .Select(same => (Merged(same.Key, [.. same.Select(s => (s.Sign, s.Cause))], spoken), same.First().Sign)),
        ];
    }

    public static ImmutableArray<Clue> Tests(Family family)
    {
        var index = family.Causes.Select((c, i) => (c.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        return
        [
            .. (family.Tests ?? []).Select(t => new Clue(
                "test:" + t.Id, ClueKind.Test, t.Id, t.Name.In("en"), t.Otherwise, [.. t.Shows.Select(s => new ClueLink(index[s.Cause], s.Shown))], t.Stage, t.Minutes)),
        ];
    }

    private static Clue Merged(string id, ImmutableArray<(Sign Sign, int Cause)> same, Spoken spoken) => new(
        id,
        KindOf(same[0].Sign),
        LookOf(same[0].Sign),
        Words(same[0].Sign, spoken),
        Highest([.. same.Select(s => s.Sign.Otherwise ?? Judged.Otherwise)]),
        [.. same.GroupBy(s => s.Cause).Select(g => new ClueLink(g.Key, g.First().Sign.Found ?? Judged.Found))],
        TestStage.Teardown,
        same.Max(s => Judged.Minutes(s.Sign)));

    /// <summary>A sign that several causes declare is found by itself as often as any of them says.</summary>
    private static Likelihood Highest(ImmutableArray<Likelihood> said) => new(said.Max(o => o.Low), said.Max(o => o.Best), said.Max(o => o.High));

    private static string IdOf(Sign sign) => sign switch
    {
        AttributeSign a => $"attribute:{a.Position}/{a.Attribute}={string.Join(',', a.Values)}",
        DamageSign d => $"damage:{d.Position}/{d.Place}={string.Join(',', d.Classes)}",
        VerdictSign v => $"verdict:{v.Subject}{(v.Side is { } side ? "/" + side.ToString().ToLowerInvariant() : "")}",
        _ => sign.ToString(),
    };

    private static ClueKind KindOf(Sign sign) => sign switch { AttributeSign => ClueKind.Attribute, DamageSign => ClueKind.Damage, _ => ClueKind.Verdict };

    private static string LookOf(Sign sign) => sign switch
    {
        AttributeSign a => $"{a.Position}/{a.Attribute}",
        DamageSign d => d.Position,
        VerdictSign v => v.Subject,
        _ => sign.ToString(),
    };

    private static string Words(Sign sign, Spoken spoken) => sign switch
    {
        AttributeSign a => $"{spoken.Subject(a.Position)}: {a.Attribute} {string.Join(" or ", a.Values)}",
        DamageSign d => $"{spoken.Subject(d.Position)}{(d.Place == "*" ? "" : ", " + d.Place)}: {string.Join(" or ", d.Classes)}",
        VerdictSign { Side: LimitSide.Below } v => $"{spoken.InSentence(v.Subject)}: below its limit",
        VerdictSign { Side: LimitSide.Above } v => $"{spoken.InSentence(v.Subject)}: above its limit",
        VerdictSign v => $"{spoken.InSentence(v.Subject)}: out of its limits",
        _ => sign.ToString(),
    };
}
