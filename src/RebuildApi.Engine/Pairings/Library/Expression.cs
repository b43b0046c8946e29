using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>
/// A relation that the family writes itself, in a small language of sums and comparisons. A number in doubt is tried at both ends of ±2 standard
/// uncertainties (about 95 %, JCGM 100:2008, 6.2); where the answer turns, the pairing is not assessed.
/// </summary>
internal sealed class Expression : Template
{
    private const double CoverageFactor = 2;
    private const string Holds = "holds";

    public override TemplateDefinition Definition { get; } = new(
        "expression",
        "An expression of the family's own",
        """
        Judges an expression that is true when the relation holds. It names what is seen or read as [role/attribute] or [role/characteristic] and the
        rule's numbers as [name]; lengths count in millimetres, angles in degrees, everything else in SI. It knows + - * / < <= > >= == != and or
        not Abs Max Min, numbers, words in quotes and brackets, and nothing else. What is not known leaves it not assessed.
        """,
        [Role("first", "a part")],
        [],
        [],
        [],
        [new OptionDefinition(Holds, "the expression, up to 500 characters", [], Required: true)],
        TakesMoreRoles: true,
        TakesMoreParameters: true);

    public override IEnumerable<TemplateProblem> CheckMore(PairingRule rule, FamilyIndex family)
    {
        if (!rule.Options.TryGetValue(Holds, out var text))
            yield break;
        if (ExpressionText.Read(text, out var whyNot) is not { } expression)
        {
            yield return new("expression-form", "options.holds", whyNot);
            yield break;
        }

        foreach (var name in expression.Names.Where(n => !rule.Parameters.ContainsKey(n) && !IsDeclared(n, rule, family)))
            yield return new("expression-name", "options.holds", $"[{name}] is neither a number of the rule nor role/attribute or role/characteristic of a part in it.");
        if (expression.Names.Length > ExpressionText.MostNames)
            yield return new("expression-form", "options.holds", $"An expression names at most {ExpressionText.MostNames} things.");
    }

    public override Assessment Judge(PairingCase parts)
    {
        if (ExpressionText.Read(parts.Option(Holds) ?? "", out _) is not { } expression)
            return Assessment.Worst([]);
        var inputs = expression.Names.Select(n => (Name: n, Input: InputOf(n, parts))).ToList();
        var missing = inputs.Select(i => i.Input.Missing).OfType<Assessment>().ToList();
        if (missing.Count > 0)
            return Assessment.Worst(missing);
        var answers = Corners(inputs.Select(i => (i.Name, i.Input.Ends)).ToList()).Select(expression.Holds).Distinct().ToList();
        var said = ("values", string.Join("; ", inputs.Select(i => $"{i.Name} = {i.Input.Ends[i.Input.Ends.Length / 2]}")));
        return answers switch
        {
            [true] => parts.Holds("expression-holds", said),
            [false] => parts.Breaks("expression-broken", said),
            [null] => new Assessment(Compatibility.NotAssessed, [parts.Because("expression-no-answer", said)], []),
            _ => new Assessment(Compatibility.NotAssessed, [parts.Because("expression-doubtful", said)], [.. expression.Names.Where(n => n.Contains('/', StringComparison.Ordinal)).Select(n => AddressOf(n, parts))]),
        };
    }

    private static bool IsDeclared(string name, PairingRule rule, FamilyIndex family) =>
        name.Split('/', 2) is [var role, var what] && rule.Roles.TryGetValue(role, out var filled) && family.KindAt(Place.Parse(filled).Position) is { } kind
        && (kind.Attributes.Any(a => a.Id == IdOf(what, filled)) || kind.Characteristics.Any(c => c.Id == IdOf(what, filled)));

    private static string IdOf(string what, string filled) => Place.Parse(filled).Feature is { } feature ? feature + "." + what : what;

    private static Address AddressOf(string name, PairingCase parts) => name.Split('/', 2) is [var role, var what] ? parts.AddressOf(role, what) : new Address("", name);

    private static Input InputOf(string name, PairingCase parts)
    {
        if (parts.Parameter(name) is { } number)
            return new Input([Scaled(number.InSi, number.Kind)], null);
        var (role, what) = name.Split('/', 2) is [var r, var w] ? (r, w) : ("", name);
        var at = parts.AddressOf(role, what);
        if (!parts.Declares(role, what))
            return parts.See(role, what).Value is { } word ? new Input([word], null) : new Input([], parts.Unknown(at));
        return parts.Read(role, what) is { Si: { } si } known
            ? new Input(Ends(si, CoverageFactor * known.Uncertainty * known.Scale.InSi, known.Scale.Dimension), null)
            : new Input([], parts.Unread(at));
    }

    private static object[] Ends(double si, double half, Dimension dimension) => half == 0
        ? [Scaled(si, dimension)]
        : [Scaled(si - half, dimension), Scaled(si, dimension), Scaled(si + half, dimension)];

    /// <summary>In the unit in which the family writes it: millimetres, degrees, else SI. Rounding noise of binary arithmetic is taken off.</summary>
    private static object Scaled(double si, Dimension dimension) => double.Parse(
        (dimension switch { Dimension.Length => si * 1000, Dimension.Angle => si * 180 / Math.PI, _ => si }).ToString("G12", CultureInfo.InvariantCulture),
        CultureInfo.InvariantCulture);

    /// <summary>Every way to put each number at its middle or one of its ends; at most 3 to the sixth.</summary>
    private static IEnumerable<IReadOnlyDictionary<string, object>> Corners(List<(string Name, object[] Ends)> inputs) => inputs.Aggregate(
        (IEnumerable<Dictionary<string, object>>)[new Dictionary<string, object>(StringComparer.Ordinal)],
        (corners, input) => corners.SelectMany(c => input.Ends.Select(e => new Dictionary<string, object>(c, StringComparer.Ordinal) { [input.Name] = e })));

    /// <summary>What one name stands for, or why nothing is known of it.</summary>
    private sealed record Input(object[] Ends, Assessment? Missing);
}
