using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings;

/// <summary>The single checks that templates are made of. Each says what it saw; unknown is never good.</summary>
internal static class Checks
{
    /// <summary>A reason of this rule.</summary>
    public static Reason Because(this PairingCase parts, string code, params (string Name, string Value)[] arguments) =>
        new(code, arguments.ToImmutableSortedDictionary(a => a.Name, a => a.Value, StringComparer.Ordinal), parts.Rule.Id);

    public static Assessment Holds(this PairingCase parts, string code, params (string Name, string Value)[] arguments) =>
        new(Compatibility.Compatible, [parts.Because(code, arguments)], []);

    public static Assessment OnCondition(this PairingCase parts, string code, params (string Name, string Value)[] arguments) =>
        new(Compatibility.Conditional, [parts.Because(code, arguments)], []);

    /// <summary>The relation does not hold: the rule says how bad that is. A rule that calls a broken relation good is not believed.</summary>
    public static Assessment Breaks(this PairingCase parts, string code, params (string Name, string Value)[] arguments) => new(
        parts.Rule.WhenBroken == Compatibility.Conditional ? Compatibility.Conditional : Compatibility.Incompatible,
        [parts.Because(code, arguments)],
        []);

    public static Assessment Unknown(this PairingCase parts, Address at) => new(
        Compatibility.NotAssessed, [parts.Because("pairing-look", ("position", at.Position), ("attribute", at.Characteristic))], [at]);

    public static Assessment Unread(this PairingCase parts, Address at) => new(
        Compatibility.NotAssessed, [parts.Because("pairing-read", ("position", at.Position), ("characteristic", at.Characteristic))], [at]);

    /// <summary>A value that this template has no meaning for is as good as unknown.</summary>
    public static Assessment Strange(this PairingCase parts, Sight sight) => new(
        Compatibility.NotAssessed,
        [parts.Because("attribute-value-strange", ("position", sight.At.Position), ("attribute", sight.At.Characteristic), ("value", sight.Value ?? string.Empty))],
        [sight.At]);

    /// <summary>The attribute must have one of the values allowed.</summary>
    public static Assessment OneOf(this PairingCase parts, string role, string name, IReadOnlyCollection<string> allowed)
    {
        var sight = parts.See(role, name);
        if (sight.Value is null)
            return parts.Unknown(sight.At);
        (string, string)[] arguments =
        [
            ("position", sight.At.Position), ("attribute", sight.At.Characteristic), ("value", sight.Value), ("allowed", string.Join(", ", allowed)),
        ];
        return allowed.Contains(sight.Value)
            ? parts.Holds("attribute-allowed", arguments[..3])
            : parts.Breaks("attribute-not-allowed", arguments);
    }

    /// <summary>The attribute must have the same value in all roles.</summary>
    public static Assessment Alike(this PairingCase parts, string name, IEnumerable<string> roles)
    {
        var sights = roles.Select(r => parts.See(r, name)).ToArray();
        var known = sights.Where(s => s.Value is not null).ToArray();
        var odd = known.FirstOrDefault(s => s.Value != known[0].Value);
        if (odd is not null)
        {
            return parts.Breaks(
                "attributes-differ",
                ("attribute", name),
                ("position", known[0].At.Position), ("value", known[0].Value!),
                ("otherPosition", odd.At.Position), ("otherValue", odd.Value!));
        }

        return known.Length == sights.Length
            ? parts.Holds("attributes-agree", ("attribute", name), ("value", known[0].Value!))
            : Assessment.Worst(sights.Where(s => s.Value is null).Select(s => parts.Unknown(s.At)));
    }

    /// <summary>
    /// A value must lie in a window. Reason codes are <paramref name="code"/> with <c>-inside</c>, <c>-below</c>, <c>-above</c>, <c>-doubtful</c>;
    /// lengths are told in <c>valueNm</c> and <c>limitNm</c>, other values in <c>value</c> and <c>limit</c>.
    /// </summary>
    public static Assessment Within(this PairingCase parts, string code, Known value, Quantity? low, Quantity? high, params Address[] settles)
    {
        if (new[] { low, high }.Any(end => end is not null && end.Kind != value.Scale.Dimension))
            return new Assessment(Compatibility.NotAssessed, [parts.Because("window-of-another-dimension")], []);
        var lies = WindowTest.Judge(value, low, high, parts.View.Snapshot.Policy);
        var limit = lies switch
        {
            Lies.Below => low!,
            Lies.Above => high!,
            _ => Nearest(value, low, high),
        };
        var arguments = Arguments(value, lies, limit);
        return lies switch
        {
            Lies.Inside => parts.Holds(code + "-inside", arguments),
            Lies.Below => parts.Breaks(code + "-below", arguments),
            Lies.Above => parts.Breaks(code + "-above", arguments),
            _ => new Assessment(Compatibility.NotAssessed, [parts.Because(code + "-doubtful", arguments)], [.. settles]),
        };
    }

    /// <summary>The difference of two characteristics must lie in a window.</summary>
    public static Assessment DifferenceWithin(
        this PairingCase parts, string code, (string Role, string Name) minuend, (string Role, string Name) subtrahend, Quantity? low, Quantity? high)
    {
        var (first, second) = (parts.Read(minuend.Role, minuend.Name), parts.Read(subtrahend.Role, subtrahend.Name));
        var (at, other) = (parts.AddressOf(minuend.Role, minuend.Name), parts.AddressOf(subtrahend.Role, subtrahend.Name));
        if (first is { } a && second is { } b)
            return parts.Within(code, a - b, low, high, at, other);
        var missing = new[] { (first, at), (second, other) }.Where(x => x.Item1 is null).Select(x => parts.Unread(x.Item2));
        return Assessment.Worst(missing);
    }

    /// <summary>A characteristic must lie in a window.</summary>
    public static Assessment ReadingWithin(this PairingCase parts, string code, string role, string name, Quantity? low, Quantity? high)
    {
        var at = parts.AddressOf(role, name);
        return parts.Read(role, name) is { } value ? parts.Within(code, value, low, high, at) : parts.Unread(at);
    }

    /// <summary>A number as reasons carry it: six significant digits, a point.</summary>
    public static string Say(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    private static (string, string)[] Arguments(Known value, Lies lies, Quantity limit)
    {
        var told = value.Point ?? (lies == Lies.Below ? value.High : value.Low) ?? value.High ?? 0;
        return limit is Exact exact
            ? [("valueNm", Math.Round(told).ToString("F0", CultureInfo.InvariantCulture)), ("limitNm", exact.Value.Nanometres.ToString(CultureInfo.InvariantCulture))]
            : [("value", told.ToString("G3", CultureInfo.InvariantCulture)), ("limit", Say(limit.InSi))];
    }

    private static Quantity Nearest(Known value, Quantity? low, Quantity? high) => (low, high) switch
    {
        ({ } l, { } h) => Math.Abs((value.Si ?? l.InSi) - l.InSi) <= Math.Abs(h.InSi - (value.Si ?? l.InSi)) ? l : h,
        ({ } l, null) => l,
        (null, { } h) => h,
        _ => throw new InvalidOperationException("A window needs at least one end."),
    };
}
