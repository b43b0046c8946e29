using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;

namespace RebuildApi.Engine.Pairings;

/// <summary>Whether parts may run together, by the family's rules.</summary>
public static class PairingJudge
{
    /// <summary>Judges one rule on the parts that count in its positions. Where several like parts fill a position, the worst decides.</summary>
    /// <param name="rule">A rule of the family that the book is read through.</param>
    /// <param name="book">What is known of the unit.</param>
    /// <param name="priceOf">What a part costs, where that is known: cures are ranked by it.</param>
    /// <returns>
    /// A verdict with reasons, cures that were tried where something is wrong, and what would settle a doubt: what is only not known is looked at,
    /// not exchanged. Never throws for what a rule or a snapshot says.
    /// </returns>
    public static PairingVerdict Judge(PairingRule rule, EstimateBook book, PriceOfPart? priceOf = null)
    {
        var verdict = JudgeWithoutCures(rule, book);
        return verdict.Outcome is Compatibility.Incompatible or Compatibility.Conditional
            ? verdict with { Cures = ProvenCures.For(rule, book, priceOf) }
            : verdict;
    }

    /// <summary>The same verdict with no cures looked for: for searching among many parts.</summary>
    public static PairingVerdict JudgeWithoutCures(PairingRule rule, EstimateBook book)
    {
        var all = Assess(rule, book);
        return new PairingVerdict(
            rule.Id,
            all.Outcome,
            rule.Severity,
            all.Reasons,
            [],
            all.Settles,
            book.View.Family.IdentityOf(rule.Id),
            book.View.InputsSha256);
    }

    /// <summary>Judges every rule of the family, in its order.</summary>
    public static ImmutableArray<PairingVerdict> JudgeAll(EstimateBook book) =>
        [.. book.View.Family.Family.Pairings.Select(rule => Judge(rule, book))];

    /// <summary>The outcome alone, without cures: for what-ifs by the thousand.</summary>
    public static Compatibility Outcome(PairingRule rule, EstimateBook book) => Assess(rule, book).Outcome;

    internal static Assessment Assess(PairingRule rule, EstimateBook book)
    {
        if (Templates.Of(rule.Template) is not { } template)
            return Cannot(rule, "template-unknown", ("template", rule.Template));
        var lacking = template.Definition.Roles.FirstOrDefault(r => r.Required && !rule.Roles.ContainsKey(r.Name));
        if (lacking is not null)
            return Cannot(rule, "role-missing", ("role", lacking.Name));
        var stray = rule.Roles.FirstOrDefault(r => !book.View.Family.Positions.ContainsKey(Place.Parse(r.Value).Position));
        if (stray.Key is not null)
            return Cannot(rule, "role-without-position", ("role", stray.Key), ("position", stray.Value));
        if (Ungiven(rule, template.Definition) is { } name)
            return Cannot(rule, "rule-number-or-word-missing", ("name", name));
        return Assessment.Worst(Cases(rule, book).SelectMany(c => Absent(c).Append(template.Judge(c))));
    }

    private static string? Ungiven(PairingRule rule, TemplateDefinition template) =>
        template.Parameters.Where(p => p.Required && !rule.Parameters.ContainsKey(p.Name)).Select(p => p.Name)
            .Concat(template.Options.Where(o => o.Required && !rule.Options.ContainsKey(o.Name)).Select(o => o.Name))
            .FirstOrDefault();

    private static IEnumerable<Assessment> Absent(PairingCase parts) => parts.Places
        .Where(p => parts.Part(p.Key) is null)
        .Select(p => new Assessment(Compatibility.NotAssessed, [parts.Because("part-missing", ("position", p.Value.Position))], []));

    /// <summary>Every choice of one part for each position.</summary>
    internal static IEnumerable<PairingCase> Cases(PairingRule rule, EstimateBook book)
    {
        var positions = rule.Roles.Values.Select(r => Place.Parse(r).Position).Distinct(StringComparer.Ordinal);
        IEnumerable<ImmutableDictionary<string, int>> choices = [ImmutableDictionary<string, int>.Empty];
        foreach (var position in positions)
        {
            var count = book.View.Family.Positions[position].Quantity;
            choices = choices.SelectMany(c => Enumerable.Range(1, count).Select(i => c.Add(position, i)));
        }

        return choices.Select(c => new PairingCase(rule, book, rule.Roles.ToImmutableSortedDictionary(
            r => r.Key, r => Place.Parse(r.Value, c[Place.Parse(r.Value).Position]), StringComparer.Ordinal)));
    }

    private static Assessment Cannot(PairingRule rule, string code, params (string Name, string Value)[] arguments) => new(
        Compatibility.NotAssessed,
        [new Reason(code, arguments.ToImmutableSortedDictionary(a => a.Name, a => a.Value, StringComparer.Ordinal), rule.Id)],
        []);
}
