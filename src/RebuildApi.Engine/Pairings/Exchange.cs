using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings;

/// <summary>An exchange of parts that might mend a pairing.</summary>
/// <param name="Id">Unique within its rule.</param>
/// <param name="Words">What to do, in plain English.</param>
/// <param name="Steps">The parts to fit.</param>
internal sealed record Exchange(string Id, string Words, ImmutableArray<CureStep> Steps);

/// <summary>How exchanges are put together. A part that goes in must be known in everything the rule looks at, so each step names one thing.</summary>
internal static class Exchanges
{
    private static readonly Source s_rule = new(SourceKind.Judgement, "the window of the rule");

    /// <summary>A part with an attribute value in a role.</summary>
    public static CureStep Fit(this PairingCase parts, string role, string name, string value)
    {
        var at = parts.AddressOf(role, name);
        return new CureStep(at.Position, at.Characteristic, value, null, null);
    }

    /// <summary>A part in a role, of which the rule looks at nothing but that it was exchanged.</summary>
    public static CureStep Fit(string position) => new(position, null, null, null, null);

    /// <summary>A part whose characteristic lies in a window; none when no end of the window is known.</summary>
    public static IEnumerable<CureStep> FitWithin(this PairingCase parts, string role, string name, Quantity? low, Quantity? high)
    {
        if (low is null && high is null)
            yield break;
        var at = parts.AddressOf(role, name);
        yield return new CureStep(at.Position, null, null, at.Characteristic, new Limits(low, high, null, s_rule));
    }

    /// <summary>
    /// The window of the first of two lengths whose difference must lie in a window, the second being read: low + second to high + second.
    /// </summary>
    public static IEnumerable<CureStep> FitFirst(
        this PairingCase parts, (string Role, string Name) first, (string Role, string Name) second, Quantity? low, Quantity? high) =>
        parts.Read(second.Role, second.Name)?.Point is { } mate
            ? parts.FitWithin(first.Role, first.Name, Shifted(low, 1, mate), Shifted(high, 1, mate))
            : [];

    /// <summary>The same of the second, the first being read: first − high to first − low.</summary>
    public static IEnumerable<CureStep> FitSecond(
        this PairingCase parts, (string Role, string Name) first, (string Role, string Name) second, Quantity? low, Quantity? high) =>
        parts.Read(first.Role, first.Name)?.Point is { } mate
            ? parts.FitWithin(second.Role, second.Name, Shifted(high, -1, mate), Shifted(low, -1, mate))
            : [];

    /// <summary>For each role whose value is known: parts like it in all other roles.</summary>
    public static IEnumerable<Exchange> MakeAlike(this PairingCase parts, IReadOnlyCollection<string> names)
    {
        foreach (var model in parts.Places.Keys)
        {
            var values = names.Select(n => (Name: n, parts.See(model, n).Value)).ToArray();
            if (values.Any(v => v.Value is null))
                continue;
            var others = parts.Places.Keys
                .Where(r => names.Any(n => parts.See(r, n).Value != parts.See(model, n).Value))
                .ToArray();
            yield return new Exchange(
                $"fit-like-{model}",
                $"Change {PositionNames.And(others.Select(o => "the " + parts.Called(o)))} for what goes with the {parts.Called(model)}: {string.Join(", ", values.Select(v => v.Value))}.",
                [.. others.SelectMany(r => values.Select(v => parts.Fit(r, v.Name, v.Value!)))]);
        }
    }

    private static Exact? Shifted(Quantity? end, int sign, double nanometres) =>
        end is Exact exact ? new Exact(new Length((long)Math.Round(nanometres) + (sign * exact.Value.Nanometres))) : null;
}
