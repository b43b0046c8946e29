using RebuildApi.Checkers.Plans;
using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Pairings;

/// <summary>
/// Engagement teeth, sleeve and stop (common practice, no source). What is not known is tried in every way in which it could turn out; only where all come to
/// the same is anything said.
/// </summary>
internal static class Engagements
{
    private static readonly string[] s_forms = ["straight", "back-tapered"];
    private static readonly string[] s_flanks = ["sound", "dark", "worn", "leaned", "rounded", "short", "spent"];
    private static readonly string[] s_stops = ["present", "limited", "none"];

    public static IReadOnlySet<Compatibility> Stop(CheckedCase parts)
    {
        var stopped = Stopped(parts.See("sleeve", "form"), parts.See("stop", "stop"), parts);
        var travels = parts.Has("travel") && (parts.Number("needed") ?? parts.Number("bottoming")) is not null;
        return travels ? Says.Worst([stopped, parts.Within(parts.Read("travel", "travel"), parts.Number("needed"), parts.Number("bottoming"))]) : stopped;
    }

    public static IReadOnlySet<Compatibility> Form(CheckedCase parts)
    {
        var stop = parts.See(parts.Has("stop") ? "stop" : "gear", "stop");
        (string? Seen, string[] All)[] asked =
        [
            (parts.See("gear", "form"), s_forms), (parts.See("gear", "drive-flank"), s_flanks), (parts.See("gear", "coast-flank"), s_flanks),
            (parts.See("sleeve", "form"), s_forms), (stop, s_stops),
        ];
        if (asked.Any(a => a.Seen is { } seen && !a.All.Contains(seen)))
            return Says.Open;
        var leanedMayRun = parts.Option("leaned-without-stop") == "conditional";
        return Agreements(parts).Select(agreement => Alone(asked, agreement, leanedMayRun)).ToHashSet();
    }

    /// <summary>The one outcome that is left whatever is not known; not assessed when there are more.</summary>
    private static Compatibility Alone((string? Seen, string[] All)[] asked, bool? agree, bool leanedMayRun)
    {
        IEnumerable<string[]> ways = [[]];
        foreach (var (seen, all) in asked)
            ways = ways.SelectMany(w => (seen is null ? all : [seen]).Select(v => (string[])[.. w, v])).ToArray();
        bool[] agreements = agree is { } known ? [known] : [true, false];
        var outcomes = ways.SelectMany(w => agreements.Select(a => Cell(w[0], w[1], w[2], w[3], w[4] != "none", a, leanedMayRun))).Distinct().ToArray();
        return outcomes.Length == 1 ? outcomes[0] : Compatibility.NotAssessed;
    }

    /// <summary>The shop's table: rows are the teeth's state, columns the sleeve and whether its travel is stopped.</summary>
    private static Compatibility Cell(string form, string drive, string coast, string sleeve, bool stopped, bool agree, bool leanedMayRun)
    {
        string[] flanks = [drive, coast];
        if (flanks.Any(f => f is "rounded" or "short" or "spent"))
            return Compatibility.Incompatible;
        var tapered = sleeve == "back-tapered";
        if (flanks.Contains("leaned") || (flanks.Contains("worn") && flanks.Contains("dark")))
            return tapered && (stopped || leanedMayRun) ? Compatibility.Conditional : Compatibility.Incompatible;
        return (form, tapered) switch
        {
            ("straight", false) => Compatibility.Compatible,
            ("straight", true) => stopped ? Compatibility.Conditional : Compatibility.Incompatible,
            (_, true) when agree => Compatibility.Compatible,
            _ => Compatibility.Incompatible,
        };
    }

    /// <summary>Whether the back tapers agree: drive flanks always, coast flanks where both declare theirs; several answers where a chance lies on the threshold.</summary>
    private static HashSet<bool?> Agreements(CheckedCase parts)
    {
        if (parts.Option("angles") == "by-form")
            return [true];
        var tolerance = parts.Number("angle-tolerance") ?? (Math.PI / 180);
        string[] flanks = parts.Declares("gear", "coast-flank-angle") && parts.Declares("sleeve", "coast-flank-angle") ? ["drive-flank-angle", "coast-flank-angle"] : ["drive-flank-angle"];
        var each = flanks.Select(f => Size(Says.Less(parts.Read("gear", f), parts.Read("sleeve", f)))).Select(d => Deciding.Of(d, null, tolerance, parts.Values.Unit.Snapshot.Policy));
        IEnumerable<Outcome[]> ways = [[]];
        foreach (var outcomes in each)
            ways = ways.SelectMany(w => outcomes.Select(o => (Outcome[])[.. w, o])).ToArray();
        return [.. ways.Select(w => w.Contains(Outcome.Nonconforming) ? false : w.All(o => o == Outcome.Conforming) ? true : (bool?)null)];
    }

    private static CheckedValue? Size(CheckedValue? value) => value is { Point: { } point } ? value with { Point = Math.Abs(point) } : null;

    private static IReadOnlySet<Compatibility> Stopped(string? form, string? stop, CheckedCase parts)
    {
        if ((form is not null && !s_forms.Contains(form)) || (stop is not null && !s_stops.Contains(stop)))
            return Says.Open;
        if (form == "straight" || stop is "present" or "limited")
            return Says.Fine;
        return parts.Holds(form is null || stop is null ? null : false);
    }
}
