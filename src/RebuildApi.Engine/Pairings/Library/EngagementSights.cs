using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>What was seen of an engagement; null is unknown. Knows every way in which the unknown could turn out.</summary>
/// <param name="Form">Form of the gear's engagement teeth.</param>
/// <param name="Drive">Their drive flanks.</param>
/// <param name="Coast">Their coast flanks.</param>
/// <param name="SleeveForm">Form of the sleeve's teeth.</param>
/// <param name="Stop">The travel stop.</param>
/// <param name="AnglesAgree">Whether the back tapers agree: <c>yes</c> or <c>no</c>.</param>
internal sealed record EngagementSights(Sight Form, Sight Drive, Sight Coast, Sight SleeveForm, Sight Stop, Sight AnglesAgree)
{
    public static readonly ImmutableArray<string> Forms = ["straight", "back-tapered"];
    public static readonly ImmutableArray<string> Flanks = ["sound", "dark", "worn", "leaned", "rounded", "short", "spent"];
    public static readonly ImmutableArray<string> Stops = ["present", "limited", "none"];
    private static readonly ImmutableArray<string> s_agreement = ["yes", "no"];

    // One flank of each sort is enough to complete with: the others lead to the same rows.
    private static readonly ImmutableArray<string> s_flanksThatDiffer = ["sound", "dark", "leaned", "spent"];
    private static readonly ImmutableArray<string> s_stopsThatDiffer = ["present", "none"];

    /// <summary>All sights with the values each may have, and those that stand for what is unknown, the most favourable first.</summary>
    private (Sight Sight, ImmutableArray<string> Values, ImmutableArray<string> Completing)[] Parts =>
    [
        (Form, Forms, Forms), (Drive, Flanks, s_flanksThatDiffer), (Coast, Flanks, s_flanksThatDiffer),
        (SleeveForm, Forms, Forms), (Stop, Stops, s_stopsThatDiffer), (AnglesAgree, s_agreement, s_agreement),
    ];

    /// <summary>The first sight with a value that has no meaning here, or null.</summary>
    public Sight? FirstStrange => Parts.Where(p => p.Sight.Value is { } v && !p.Values.Contains(v)).Select(p => p.Sight).FirstOrDefault();

    /// <summary>Every way in which what is unknown could turn out, the most favourable first.</summary>
    public IEnumerable<EngagementSights> Completions() => Parts.Aggregate(
        Enumerable.Repeat(this, 1),
        (all, part) => part.Sight.Value is not null ? all : all.SelectMany(s => part.Completing.Select(v => s.With(part.Sight, v))));

    /// <summary>
    /// The unknown sights that still decide: there is a completion whose outcome turns when only that sight does. Completions count through the
    /// unknowns like the digits of a number, the last one fastest.
    /// </summary>
    /// <param name="outcomes">The outcome of each of <see cref="Completions"/>, in its order.</param>
    public IEnumerable<Sight> Deciding(Compatibility[] outcomes)
    {
        var stride = outcomes.Length;
        foreach (var part in Parts.Where(p => p.Sight.Value is null))
        {
            var choices = part.Completing.Length;
            stride /= choices;
            var (step, round) = (stride, stride * choices);
            if (Enumerable.Range(0, outcomes.Length).Any(i => outcomes[i] != outcomes[(i / round * round) + (i % step)]))
                yield return part.Sight;
        }
    }

    /// <summary>The same with one sight known.</summary>
    public EngagementSights With(Sight sight, string value)
    {
        Sight Now(Sight s) => s.At == sight.At && s.Value is null ? s with { Value = value } : s;
        return new(Now(Form), Now(Drive), Now(Coast), Now(SleeveForm), Now(Stop), Now(AnglesAgree));
    }

    /// <summary>
    /// What the table looks at. Wear on one flank with the other dark and untouched means that the teeth have leaned, however sharp they look
    /// (common practice, no source).
    /// </summary>
    public Engagement ToEngagement() => new(
        TeethOf(),
        SleeveForm.Value == "back-tapered",
        Stop.Value is "present" or "limited",
        AnglesAgree.Value == "yes");

    /// <summary>Whether the teeth have leaned on the drive side while the coast flanks are dark and untouched.</summary>
    public bool LeanedOnDriveOnly => Drive.Value is "leaned" or "worn" && Coast.Value == "dark";

    private Teeth TeethOf()
    {
        string?[] flanks = [Drive.Value, Coast.Value];
        if (flanks.Any(f => f is "rounded" or "short" or "spent"))
            return Teeth.Spent;
        if (flanks.Contains("leaned") || (flanks.Contains("worn") && flanks.Contains("dark")))
            return Teeth.Leaned;
        return Form.Value == "back-tapered" ? Teeth.BackTapered : Teeth.Straight;
    }
}
