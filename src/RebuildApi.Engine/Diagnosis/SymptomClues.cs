using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>
/// A symptom as the owner worded it. A cause that can't bring it in that gear, load, temperature or road takes no part; one that brings it wider or
/// narrower than it was worded does, as likely as owners word it so loosely.
/// </summary>
internal static class SymptomClues
{
    public static Clue Of(SymptomSeen seen, Family family)
    {
        var symptom = family.Symptoms.First(s => s.Id == seen.Symptom);
        var loosely = symptom.Loosely ?? Judged.Loosely;
        var links = family.Causes.Select((cause, i) => Strongest(cause, i, seen, loosely)).OfType<ClueLink>();
        var id = string.Join('/', new[] { "symptom:" + seen.Symptom, seen.Gear }.OfType<string>().Concat(Said(seen.When)));
        return new Clue(id, ClueKind.Symptom, id, Words(symptom, seen), symptom.Leak ?? Judged.Leak, [.. links], TestStage.BeforeStripDown, 0);
    }

    private static ClueLink? Strongest(Cause cause, int index, SymptomSeen seen, Likelihood loosely)
    {
        var brought = cause.Explains.Where(link => link.Symptom == seen.Symptom && Fits(link, seen)).Select(link => Worded(link, seen, loosely)).MaxBy(l => l.Best);
        return brought is null ? null : new ClueLink(index, brought);
    }

    private static bool Fits(SymptomLink link, SymptomSeen seen) =>
        Agree(link.Gear, seen.Gear) && Sides(link.When).Zip(Sides(seen.When)).All(side => Agree(side.First, side.Second));

    private static bool Agree(string? brought, string? said) => brought is null || said is null || brought == said;

    private static Likelihood Worded(SymptomLink link, SymptomSeen seen, Likelihood loosely)
    {
        var wider = Sides(link.When).Zip(Sides(seen.When)).Count(side => side.First is null && side.Second is not null);
        var gear = link.Gear is null == seen.Gear is null ? 0 : 1;
        return new Likelihood(
            link.Low * Math.Pow(loosely.Low, wider + gear), link.Best * Math.Pow(loosely.Best, wider + gear), link.High * Math.Pow(loosely.High, wider + gear));
    }

    private static string?[] Sides(SymptomContext? when) => [when?.Load?.ToString(), when?.Clutch?.ToString(), when?.Temperature?.ToString(), when?.Road?.ToString()];

    private static IEnumerable<string> Said(SymptomContext? when) => Sides(when).OfType<string>().Select(side => side.ToLowerInvariant());

    private static string Words(Symptom symptom, SymptomSeen seen)
    {
        var said = new[] { seen.Gear }.Concat(Said(seen.When)).OfType<string>().ToArray();
        return said.Length == 0 ? symptom.Name.In("en") : $"{symptom.Name.In("en")} ({string.Join(", ", said)})";
    }
}
