namespace RebuildApi.Engine.Planning.Solving;

/// <summary>A sum with its window, kept by the ends that the open options can reach.</summary>
internal sealed class SumRow(PlanSum sum)
{
    private readonly int[] _choices = [.. sum.Terms.Select(t => t.Choice)];
    private readonly long[][] _amounts = [.. sum.Terms.Select(t => t.Amounts.Select(a => a ?? 0).ToArray())];
    private readonly bool[][] _unknown = [.. sum.Terms.Select(t => t.Amounts.Select(a => a is null).ToArray())];
    private readonly double[][] _variances = [.. sum.Terms.Select(t => t.Variances.IsDefaultOrEmpty ? new double[t.Amounts.Length] : [.. t.Variances])];

    public int[] Choices => _choices;

    /// <summary>Whether the sum of a complete choice lies in its window.</summary>
    public bool Holds(ReadOnlySpan<int> picks)
    {
        var (total, variance) = (0L, sum.Variance);
        for (var t = 0; t < _choices.Length; t++)
        {
            var option = picks[_choices[t]];
            if (_unknown[t][option])
                return true;
            total += _amounts[t][option];
            variance += _variances[t][option];
        }

        var guard = GuardOf(variance);
        return (sum.Low == long.MinValue || total >= sum.Low + guard) && (sum.High == long.MaxValue || total <= sum.High - guard);
    }

    /// <summary>Removes options with which the window can't be reached whatever else is taken.</summary>
    /// <returns>False when nothing reaches it.</returns>
    public bool Narrow(Domains domains, ref bool changed)
    {
        if (!Reach(domains, out var least, out var most, out var variance))
            return true;
        for (var t = 0; t < _choices.Length; t++)
        {
            var choice = _choices[t];
            var (own, ownMost, ownVariance) = Span(domains, t);
            for (var i = domains.Size(choice) - 1; i >= 0; i--)
            {
                var option = domains.Of(choice)[i];
                var guard = GuardOf(variance - ownVariance + _variances[t][option]);
                if ((sum.Low == long.MinValue || most - ownMost + _amounts[t][option] >= sum.Low + guard)
                    && (sum.High == long.MaxValue || least - own + _amounts[t][option] <= sum.High - guard))
                    continue;
                domains.Remove(choice, option);
                changed = true;
            }

            if (domains.Size(choice) == 0)
                return false;
        }

        return _choices.Length > 0 || Holds([]);
    }

    private long GuardOf(double variance) => sum.Guard == 0 ? 0 : (long)Math.Ceiling((sum.Guard * Math.Sqrt(Math.Max(0, variance))) - 1e-6);

    /// <summary>The ends that the sum can reach; false when an open option leaves it free.</summary>
    private bool Reach(Domains domains, out long least, out long most, out double variance)
    {
        (least, most, variance) = (0, 0, sum.Variance);
        for (var t = 0; t < _choices.Length; t++)
        {
            foreach (var option in domains.Of(_choices[t]))
            {
                if (_unknown[t][option])
                    return false;
            }

            var (low, high, doubt) = Span(domains, t);
            (least, most, variance) = (least + low, most + high, variance + doubt);
        }

        return true;
    }

    private (long Least, long Most, double Variance) Span(Domains domains, int term)
    {
        var (least, most, variance) = (long.MaxValue, long.MinValue, double.MaxValue);
        foreach (var option in domains.Of(_choices[term]))
        {
            least = Math.Min(least, _amounts[term][option]);
            most = Math.Max(most, _amounts[term][option]);
            variance = Math.Min(variance, _variances[term][option]);
        }

        return (least, most, variance);
    }
}
