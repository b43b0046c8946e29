using System.Collections.Immutable;
using RebuildApi.Engine.Statistics;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Composition;

/// <summary>What a control chart was asked, read; values in SI.</summary>
/// <param name="Sent">The request.</param>
/// <param name="Subgroups">The subgroups; none for a chart of single values.</param>
/// <param name="Levels">Means of subgroups, or the single values.</param>
public sealed record ControlChartIntake(ControlChartRequest Sent, ImmutableArray<ImmutableArray<double>>? Subgroups, ImmutableArray<double> Levels)
{
    /// <summary>Reads it; null with complaints.</summary>
    public static ControlChartIntake? Of(ControlChartRequest sent, Complaints complaints)
    {
        if (sent.Subgroups is null == sent.Values is null)
        {
            complaints.Add("", FieldProblems.Contradiction, "Exactly one of subgroups and values is needed.");
            return null;
        }

        var count = sent.Subgroups?.Length ?? sent.Values!.Value.Length;
        if (sent.Steady > count)
            complaints.Add("/steady", FieldProblems.OutOfRange, $"There are only {count} points.", sent.Steady?.ToString(System.Globalization.CultureInfo.InvariantCulture));
        if (sent.Values is { } values)
            return new(sent, null, Points.Si(values, sent.Dimension, "/values", complaints));
        var groups = sent.Subgroups!.Value.Select((g, i) => Points.Si(g.Values, sent.Dimension, $"/subgroups/{i}/values", complaints)).ToImmutableArray();
        return new(sent, groups, [.. groups.Select(g => g.Average())]);
    }

    /// <summary>The chart of the steady time.</summary>
    /// <exception cref="ArgumentException">Subgroups of several sizes, or too large for ranges.</exception>
    public ControlChart Chart()
    {
        var (steady, sigmas) = (Sent.Steady ?? Levels.Length, (double)Sent.Sigmas);
        if (Subgroups is not { } groups)
            return ControlChart.Individuals([.. Levels.Take(steady)], sigmas);
        return Sent.Spread == "range"
            ? ControlChart.MeanAndRange([.. groups.Take(steady)], sigmas)
            : ControlChart.MeanAndDeviation([.. groups.Take(steady)], sigmas);
    }
}
