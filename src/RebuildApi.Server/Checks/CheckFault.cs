using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Checks;

/// <summary>Why a row can't be judged. It stands in the answer in the row's place.</summary>
/// <param name="Problem">What sort of fault.</param>
/// <param name="Field">Which field.</param>
/// <param name="Got">What was sent.</param>
/// <param name="Allowed">What is allowed, or what to do.</param>
public sealed record CheckFault(Problem Problem, string Field, string Got, string Allowed)
{
    private const int LongestGot = 80;

    /// <summary>A fault in one field.</summary>
    public static CheckFault In(string field, Problem problem, ReadOnlySpan<byte> got, string allowed) => new(problem, field, Shown(got), allowed);

    /// <summary>A word that is none of those known.</summary>
    public static CheckFault Unknown(string field, Problem problem, ReadOnlySpan<byte> got, IEnumerable<string> known)
    {
        var shown = Shown(got);
        var nearest = Nearest.To(shown, known);
        return new CheckFault(problem, field, shown, nearest is null ? problem.Fix : $"Did you mean {nearest}?");
    }

    /// <summary>As it stands in an answer.</summary>
    public FaultWire Wire() => new(Problem.Code, Field, Problem.Title + ".", Got, Allowed);

    private static string Shown(ReadOnlySpan<byte> text)
    {
        var all = System.Text.Encoding.UTF8.GetString(text[..Math.Min(text.Length, LongestGot)]);
        return text.Length > LongestGot ? all + "…" : all;
    }
}
