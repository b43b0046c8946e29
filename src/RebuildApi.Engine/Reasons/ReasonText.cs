using System.Collections.Frozen;
using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using RebuildApi.Contracts;
using RebuildApi.Engine.Quantities;

namespace RebuildApi.Engine.Reasons;

/// <summary>
/// Puts reason codes into words, in one place. The sentences stand in <c>Texts/*.txt</c>, one <c>code = sentence</c> a line, with the
/// arguments in braces; an argument whose name ends in <c>Nm</c> is a whole number of nanometres and is shown in both systems; one whose
/// name ends in <c>Si</c> is in SI and is shown in the shop's unit of the argument <c>dimension</c>.
/// </summary>
public static partial class ReasonText
{
    private const string Prefix = "reasons/";

    /// <summary>Every code that has a sentence.</summary>
    public static FrozenDictionary<string, string> Sentences { get; } = Load();

    /// <summary>A reason as a sentence. A code without one (from a hook, say) is shown with its arguments.</summary>
    public static string Words(Reason reason) => Words(reason.Code, reason.Arguments);

    /// <summary>The same, with everything called by its name: <c>third gear</c>, not <c>third-gear</c>.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="names">The names.</param>
    public static string Words(Reason reason, ISpokenNames names)
    {
        var named = reason.Arguments.ToDictionary(a => a.Key, a => NameOf(a.Key, a.Value, reason, names), StringComparer.Ordinal);
        var spoken = Words(reason.Code, named);
        // An id stays as it is; a name that a sentence begins with begins like one.
        var isNameFirst = Sentences.TryGetValue(reason.Code, out var sentence) && Placeholder().Match(sentence) is { Success: true, Index: 0 } first
            && named.GetValueOrDefault(first.Groups[1].Value) != reason.Arguments.GetValueOrDefault(first.Groups[1].Value);
        return isNameFirst ? char.ToUpperInvariant(spoken[0]) + spoken[1..] : spoken;
    }

    /// <summary>A name within a sentence: <c>third gear</c> for <c>Third gear</c>.</summary>
    public static string Inside(string name) => name.Length > 1 && char.IsLower(name[1]) ? char.ToLowerInvariant(name[0]) + name[1..] : name;

    // The other arguments hold values, some of which happen to read like a position: "oil", "case".
    private static string NameOf(string argument, string value, Reason reason, ISpokenNames names) => argument switch
    {
        "attribute" or "characteristic" => InsideOr(names.OfTerm(reason.Arguments.GetValueOrDefault("position"), value), value),
        "subject" or "at" or "loop" or "of" => InsideOr(names.OfSubject(value), value),
        "operation" => InsideOr(names.OfOperation(value), value),
        "position" or "positions" or "otherPosition" or "exchanged" or "kept" or "gear" or "sleeve" or "ring" or "driver" or "driven" or "first" or "second" =>
            string.Join(", ", value.Split(", ").Select(v => InsideOr(names.OfPosition(v), v))),
        _ => value,
    };

    private static string InsideOr(string? name, string id) => string.IsNullOrEmpty(name) ? id : Inside(name);

    /// <summary>A code with its arguments as a sentence.</summary>
    public static string Words(string code, IReadOnlyDictionary<string, string> arguments) => Sentences.TryGetValue(code, out var sentence)
        ? Placeholder().Replace(sentence, match => Argument(match.Groups[1].Value, arguments))
        : code + string.Concat(arguments.Select(a => $" {a.Key}={a.Value}"));

    private static string Argument(string name, IReadOnlyDictionary<string, string> arguments)
    {
        if (!arguments.TryGetValue(name, out var value))
            return "?";
        if (name.EndsWith("Nm", StringComparison.Ordinal) && long.TryParse(value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var nm))
            return QuantityWords.Both(new Length(nm));
        return name.EndsWith("Si", StringComparison.Ordinal)
            && double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var si)
            && Enum.TryParse<Dimension>(arguments.GetValueOrDefault("dimension"), out var dimension)
                ? OfSi(name, si, dimension)
                : value;
    }

    private static string OfSi(string name, double si, Dimension dimension) => IsDifference(name)
        ? QuantityWords.OfDifference(si, dimension)
        : QuantityWords.Of(si, dimension);

    private static bool IsDifference(string name) =>
        name.StartsWith("uncertainty", StringComparison.Ordinal) || name.StartsWith("room", StringComparison.Ordinal) || name.StartsWith("past", StringComparison.Ordinal);

    private static FrozenDictionary<string, string> Load()
    {
        var assembly = typeof(ReasonText).Assembly;
        return assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
            .SelectMany(name => Lines(assembly, name))
            .ToFrozenDictionary(line => line.Code, line => line.Sentence, StringComparer.Ordinal);
    }

    private static IEnumerable<(string Code, string Sentence)> Lines(Assembly assembly, string resource)
    {
        using var reader = new StreamReader(assembly.GetManifestResourceStream(resource)!);
        while (reader.ReadLine() is { } line)
        {
            var equals = line.IndexOf(" = ", StringComparison.Ordinal);
            if (equals > 0 && line[0] != '#')
                yield return (line[..equals].Trim(), line[(equals + 3)..].Trim());
        }
    }

    [GeneratedRegex(@"\{([A-Za-z0-9]+)\}")]
    private static partial Regex Placeholder();
}
