using System.Collections.Immutable;
using System.Text.RegularExpressions;
using NCalc;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>
/// An expression of a family, looked through word by word before the library sees it: only what is listed passes, so that nothing in it can run long, reach
/// out, or change anything. NCalc works out what is left.
/// </summary>
internal sealed partial class ExpressionText
{
    public const int MostNames = 6;
    private const int Longest = 500;
    private const int Deepest = 20;
    private readonly string _text;

    private ExpressionText(string text, ImmutableArray<string> names) => (_text, Names) = (text, names);

    /// <summary>What it names, each once.</summary>
    public ImmutableArray<string> Names { get; }

    /// <summary>Reads an expression, or gives null with the reason in words.</summary>
    public static ExpressionText? Read(string text, out string whyNot)
    {
        whyNot = Refusal(text);
        if (whyNot.Length > 0)
            return null;
        var own = new ExpressionText(text, [.. Name().Matches(text).Select(m => m.Groups[1].Value).Distinct(StringComparer.Ordinal)]);
        if (new NCalc.Expression(text, ExpressionOptions.NoCache) is var tried && tried.HasErrors())
            whyNot = $"'{text}' is not an expression that can be worked out.";
        return whyNot.Length == 0 ? own : null;
    }

    /// <summary>Whether the relation holds with these values; null when that is neither true nor false.</summary>
    public bool? Holds(IReadOnlyDictionary<string, object> values)
    {
        var expression = new NCalc.Expression(_text, ExpressionOptions.NoCache);
        foreach (var (name, value) in values)
            expression.Parameters[name] = value;
        try
        {
            return expression.Evaluate() as bool?;
        }
        catch (Exception e) when (e is NCalc.Exceptions.NCalcException or InvalidOperationException or ArithmeticException or FormatException or InvalidCastException)
        {
            // Words added to numbers, a division by nothing: no answer.
            return null;
        }
    }

    private static string Refusal(string text)
    {
        if (text.Length is 0 or > Longest)
            return $"An expression has 1 to {Longest} characters.";
        var at = 0;
        var depth = 0;
        while (at < text.Length)
        {
            var word = Word().Match(text, at);
            if (!word.Success)
                return $"'{text[at]}' at place {at + 1} is not part of an expression.";
            depth += word.Value switch { "(" => 1, ")" => -1, _ => 0 };
            if (depth > Deepest)
                return $"Brackets lie more than {Deepest} deep.";
            at += word.Length;
        }

        return "";
    }

    [GeneratedRegex(@"\G(?:\s+|\[[a-z0-9./-]{1,140}\]|[0-9]{1,9}(?:\.[0-9]{1,9})?|'[a-z0-9.-]{0,64}'|<=|>=|==|!=|\*(?!\*)|[-+/<>(),](?![<>])|(?:and|or|not|Abs|Max|Min)\b)", RegexOptions.CultureInvariant)]
    private static partial Regex Word();

    [GeneratedRegex(@"\[([^\]]+)\]", RegexOptions.CultureInvariant)]
    private static partial Regex Name();
}
