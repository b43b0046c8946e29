using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings.Library;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Pairings;

/// <summary>Judges each sleeve with all the gears that it serves, for every form that the sleeve could have.</summary>
public static class Neighbourhoods
{
    private const string Engagement = "engagement-form";

    /// <summary>Every sleeve of the family that serves two gears or more, in the order of its rules.</summary>
    public static ImmutableArray<Neighbourhood> JudgeAll(EstimateBook book) =>
    [
        .. book.View.Family.Family.Pairings
            .Where(r => IsEngagement(r, book.View.Family))
            .Select(SleeveOf)
            .Distinct(StringComparer.Ordinal)
            .Select(sleeve => Judge(sleeve, book))
            .OfType<Neighbourhood>(),
    ];

    /// <summary>One sleeve with its gears; null when it does not serve two or more by the family's rules.</summary>
    /// <param name="sleeve">The position of the sleeve.</param>
    /// <param name="book">What is known of the unit.</param>
    public static Neighbourhood? Judge(string sleeve, EstimateBook book)
    {
        var rules = book.View.Family.Family.Pairings.Where(r => IsEngagement(r, book.View.Family) && SleeveOf(r) == sleeve).ToImmutableArray();
        if (rules.Length < 2)
            return null;
        var now = Sides(rules, book);
        var choices = EngagementSights.Forms.Select(form => Choose(form, rules, now, book)).ToImmutableArray();
        return new Neighbourhood(
            sleeve,
            Worst(now),
            choices,
            [Summary(sleeve, choices)],
            Worst(now) == Compatibility.Compatible ? [] : Cures(rules, choices, book),
            [.. now.SelectMany(v => v.Settles).Distinct()]);
    }

    private static SleeveChoice Choose(string form, ImmutableArray<PairingRule> rules, ImmutableArray<PairingVerdict> now, EstimateBook book)
    {
        var isPresent = CasesOf(rules, book).All(c => c.See("sleeve", "form").Value == form);
        var sides = isPresent ? now : Sides(rules, ProvenCures.After(new Cure(form, Text.English(form, form), false, Sleeve(form, rules, book)), book));
        return new SleeveChoice(form, isPresent, Worst(sides), sides);
    }

    /// <summary>For each form: that sleeve, and sound gears of that form on the sides that it does not suit. Kept when it then suits all.</summary>
    private static ImmutableArray<Cure> Cures(ImmutableArray<PairingRule> rules, ImmutableArray<SleeveChoice> choices, EstimateBook book)
    {
        var cures = new List<Cure>();
        foreach (var choice in choices)
        {
            var wrong = rules.Zip(choice.Sides).Where(x => x.Second.Outcome != Compatibility.Compatible).Select(x => x.First).ToImmutableArray();
            var taper = TaperFor(rules, choice.IsPresent, book);
            var gears = CasesOf(wrong, book).SelectMany(c => EngagementCures.Gear(c, choice.Form, taper));
            ImmutableArray<CureStep> steps = [.. choice.IsPresent ? [] : Sleeve(choice.Form, rules, book), .. gears];
            var cure = new Cure($"all-{choice.Form}", Text.English($"all-{choice.Form}", Words(choice, wrong, book.View.Family)), Sufficient: true, steps);
            if (!steps.IsEmpty && Worst(Sides(rules, ProvenCures.After(cure, book))) == Compatibility.Compatible)
                cures.Add(cure);
        }

        return CureCosts.CheapestFirst([.. cures], book.View.Family);
    }

    private static string Words(SleeveChoice choice, ImmutableArray<PairingRule> wrong, FamilyIndex family)
    {
        var sleeve = choice.IsPresent ? "Keep the sleeve" : $"Fit a {choice.Form} sleeve";
        var gears = PositionNames.And(wrong.Select(r => "the " + family.Called(Place.Parse(r.Roles["gear"]).Position)).Distinct());
        return gears.Length == 0 ? sleeve + "." : $"{sleeve} and change {gears} for sound {choice.Form} engagement teeth.";
    }

    private static Reason Summary(string sleeve, ImmutableArray<SleeveChoice> choices)
    {
        var suits = choices.Where(c => c.Outcome is Compatibility.Compatible or Compatibility.Conditional).ToArray();
        var (code, form) = (suits.Length, choices.All(c => c.Outcome == Compatibility.Incompatible)) switch
        {
            ( > 0, _) => ("neighbourhood-form-suits", string.Join(", ", suits.OrderBy(c => Assessment.Rank(c.Outcome)).Select(c => c.Form))),
            (_, true) => ("neighbourhood-no-form-suits", string.Empty),
            _ => ("neighbourhood-open", string.Empty),
        };
        return new Reason(code, ImmutableSortedDictionary<string, string>.Empty.Add("sleeve", sleeve).Add("form", form), sleeve);
    }

    private static ImmutableArray<CureStep> Sleeve(string form, ImmutableArray<PairingRule> rules, EstimateBook book)
    {
        var taper = TaperFor(rules, isSleeveKept: false, book);
        return [.. CasesOf(rules, book).SelectMany(c => EngagementCures.Sleeve(c, form, taper)).DistinctBy(s => (s.Attribute, s.Characteristic))];
    }

    /// <summary>The taper that exchanged parts get: that of the sleeve when it stays, else of the first gear that has one.</summary>
    private static double TaperFor(ImmutableArray<PairingRule> rules, bool isSleeveKept, EstimateBook book)
    {
        var cases = CasesOf(rules, book).ToArray();
        return isSleeveKept
            ? EngagementCures.TaperFor(cases[0], "sleeve")
            : EngagementCures.TaperFor(cases.FirstOrDefault(c => c.See("gear", "form").Value == "back-tapered") ?? cases[0], "gear");
    }

    private static IEnumerable<PairingCase> CasesOf(IEnumerable<PairingRule> rules, EstimateBook book) =>
        rules.Select(r => PairingJudge.Cases(r, book).First());

    private static ImmutableArray<PairingVerdict> Sides(IEnumerable<PairingRule> rules, EstimateBook book) => [.. rules.Select(r => PairingJudge.JudgeWithoutCures(r, book))];

    private static Compatibility Worst(ImmutableArray<PairingVerdict> sides) => sides.Select(s => s.Outcome).MaxBy(Assessment.Rank);

    private static bool IsEngagement(PairingRule rule, FamilyIndex family) =>
        rule.Template == Engagement
        && rule.Roles.ContainsKey("gear")
        && rule.Roles.ContainsKey("sleeve")
        && rule.Roles.Values.All(r => family.Positions.ContainsKey(Place.Parse(r).Position));

    private static string SleeveOf(PairingRule rule) => Place.Parse(rule.Roles["sleeve"]).Position;
}
