using System.Globalization;
using System.Text.RegularExpressions;

namespace RebuildApi.Checkers.Pairings;

/// <summary>Works an expression out by recursive descent: or, and, not, comparisons, sums, products, signs, calls, brackets.</summary>
internal sealed partial class ExpressionReader(string text, IReadOnlyDictionary<string, object> values)
{
    private readonly string[] _words = [.. Word().Matches(text).Select(m => m.Value)];
    private int _at;

    /// <summary>True or false; none when it is neither.</summary>
    public bool? Holds()
    {
        try
        {
            return Or() is bool holds && _at == _words.Length ? holds : null;
        }
        catch (Exception e) when (e is InvalidCastException or FormatException or KeyNotFoundException)
        {
            return null;
        }
    }

    private object Or()
    {
        var left = And();
        while (Take("or"))
            left = (bool)And() | (bool)left;
        return left;
    }

    private object And()
    {
        var left = Not();
        while (Take("and"))
            left = (bool)Not() & (bool)left;
        return left;
    }

    private object Not() => Take("not") ? !(bool)Not() : Compared();

    private object Compared()
    {
        var left = Sum();
        foreach (var sign in new[] { "<=", ">=", "==", "!=", "<", ">" })
        {
            if (!Take(sign))
                continue;
            var right = Sum();
            return sign switch
            {
                "==" => Equals(left, right),
                "!=" => !Equals(left, right),
                "<=" => (double)left <= (double)right,
                ">=" => (double)left >= (double)right,
                "<" => (double)left < (double)right,
                _ => (double)left > (double)right,
            };
        }

        return left;
    }

    private object Sum()
    {
        var left = Product();
        while (true)
        {
            if (Take("+"))
                left = (double)left + (double)Product();
            else if (Take("-"))
                left = (double)left - (double)Product();
            else
                return left;
        }
    }

    private object Product()
    {
        var left = Sign();
        while (true)
        {
            if (Take("*"))
                left = (double)left * (double)Sign();
            else if (Take("/"))
                left = (double)left / (double)Sign();
            else
                return left;
        }
    }

    private object Sign() => Take("-") ? -(double)Sign() : Take("+") ? Sign() : One();

    private object One()
    {
        var word = _at < _words.Length ? _words[_at++] : throw new FormatException();
        if (word == "(")
        {
            var inner = Or();
            return Take(")") ? inner : throw new FormatException();
        }

        return word switch
        {
            "Abs" or "Min" or "Max" => Called(word),
            ['[', ..] => values[word[1..^1]],
            ['\'', ..] => word[1..^1],
            _ => double.Parse(word, CultureInfo.InvariantCulture),
        };
    }

    private object Called(string name)
    {
        if (!Take("("))
            throw new FormatException();
        var first = (double)Or();
        var result = name == "Abs" ? Math.Abs(first) : Take(",") ? (name == "Min" ? Math.Min(first, (double)Or()) : Math.Max(first, (double)Or())) : throw new FormatException();
        return Take(")") ? result : throw new FormatException();
    }

    private bool Take(string word)
    {
        if (_at >= _words.Length || _words[_at] != word)
            return false;
        _at++;
        return true;
    }

    [GeneratedRegex(@"\[[^\]]+\]|'[^']*'|[0-9]+(?:\.[0-9]+)?|<=|>=|==|!=|[-+*/<>(),]|[A-Za-z]+")]
    private static partial Regex Word();
}
