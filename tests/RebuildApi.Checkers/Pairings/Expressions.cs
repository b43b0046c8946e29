using System.Globalization;
using System.Text.RegularExpressions;
using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Pairings;

/// <summary>
/// A family's own expression, read by a descent of its own. Numbers in doubt are tried at both ends of ±2 standard uncertainties; where the answer turns,
/// nothing is said.
/// </summary>
internal static partial class Expressions
{
    public static IReadOnlySet<Compatibility> Judge(CheckedCase parts)
    {
        var text = parts.Option("holds") ?? "";
        var names = Name().Matches(text).Select(m => m.Groups[1].Value).Distinct().ToArray();
        var inputs = names.Select(n => Ends(n, parts)).ToArray();
        if (text.Length == 0 || inputs.Any(i => i.Length == 0))
            return Says.Open;
        IEnumerable<Dictionary<string, object>> ways = [new(StringComparer.Ordinal)];
        foreach (var (name, ends) in names.Zip(inputs))
            ways = ways.SelectMany(w => ends.Select(e => new Dictionary<string, object>(w, StringComparer.Ordinal) { [name] = e })).ToArray();
        var answers = ways.Select(w => new ExpressionReader(text, w).Holds()).Distinct().ToArray();
        return parts.Holds(answers is [{ } one] ? one : null);
    }

    /// <summary>Lengths in millimetres, angles in degrees, all else in SI.</summary>
    private static object[] Ends(string name, CheckedCase parts)
    {
        if (parts.Rule.Parameters.GetValueOrDefault(name) is { } number)
            return [Rounded(number.InSi * PerSi(number.Kind))];
        var (role, what) = name.Split('/', 2) is [var r, var w] ? (r, w) : ("", name);
        if (!parts.Declares(role, what))
            return parts.See(role, what) is { } word ? [word] : [];
        if (parts.Read(role, what) is not { Point: { } point } value)
            return [];
        var dimension = parts.Values.Unit.CharacteristicAt(parts.Places[role].Position, parts.NameAt(role, what))!.Dimension;
        var scale = PerSi(dimension) * (dimension == Dimension.Length ? 1e-9 : 1);
        return value.U == 0 ? [Rounded(point * scale)] : [Rounded((point - (2 * value.U)) * scale), Rounded(point * scale), Rounded((point + (2 * value.U)) * scale)];
    }

    private static double PerSi(Dimension dimension) => dimension switch { Dimension.Length => 1000, Dimension.Angle => 180 / Math.PI, _ => 1 };

    private static object Rounded(double value) => double.Parse(value.ToString("G12", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\[([^\]]+)\]")]
    private static partial Regex Name();
}
