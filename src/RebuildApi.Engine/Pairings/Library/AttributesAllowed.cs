using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>A table of the combinations of one attribute that may run together.</summary>
internal sealed class AttributesAllowed : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "attributes-allowed",
        "Combinations allowed",
        """
        Judges one attribute, seen in every role, against a table of combinations: those allowed, those that may run on a condition, and all
        others, which may not. An option role.attribute names the attribute where a part calls it otherwise. With one role it is a list of the
        values allowed.
        """,
        [Role("first", "a part"), MaybeRole("second", "another")],
        [],
        [],
        [],
        [
            new OptionDefinition("attribute", "name of the attribute", [], Required: true),
            new OptionDefinition("allowed", "combinations that may run: first=a+second=b|first=c+second=d", [], Required: true),
            Word("conditional", "combinations that may run on the condition that the rule's consequence states"),
        ],
        TakesMoreRoles: true);

    public override Assessment Judge(PairingCase parts)
    {
        var name = parts.Option("attribute") ?? string.Empty;
        var (allowed, conditional) = (parts.List("allowed"), parts.List("conditional"));
        if (Combinations.Match(parts, name, allowed) is { } match)
            return parts.Holds("combination-allowed", ("attribute", name), ("combination", Told(parts, match)));
        if (Combinations.Match(parts, name, conditional) is { } onCondition)
            return parts.OnCondition("combination-conditional", ("attribute", name), ("combination", Told(parts, onCondition)));
        var sights = parts.Places.Keys.Select(r => parts.See(r, name)).ToArray();
        var unknown = sights.Where(s => s.Value is null).ToArray();
        var couldStill = allowed.Concat(conditional).Any(c => Combinations.CouldMatch(parts, name, c));
        return unknown.Length > 0 && couldStill
            ? Assessment.Worst(unknown.Select(s => parts.Unknown(s.At)))
            : parts.Breaks("combination-not-allowed", ("attribute", name), ("combination", PositionNames.And(sights.Select(s => $"{s.Value ?? "unknown"} on the {parts.Family.Called(s.At.Position)}"))));
    }

    private static string Told(PairingCase parts, string combination) =>
        PositionNames.And(Combinations.Pairs(combination).Where(p => parts.Has(p.Role)).Select(p => $"{p.Value} on the {parts.Called(p.Role)}"));

    public override IEnumerable<Exchange> Exchanges(PairingCase parts)
    {
        var name = parts.Option("attribute") ?? string.Empty;
        foreach (var combination in parts.List("allowed"))
        {
            var others = Combinations.Pairs(combination).Where(p => parts.Has(p.Role) && parts.See(p.Role, name).Value != p.Value).ToArray();
            yield return new Exchange(
                "fit-" + string.Join("-", others.Select(o => o.Value)),
                "Change " + PositionNames.And(others.Select(o => $"the {parts.Called(o.Role)} for {o.Value}")) + ".",
                [.. others.Select(o => parts.Fit(o.Role, name, o.Value))]);
        }
    }
}
