namespace RebuildApi.Engine.Selection;

/// <summary>
/// What the choices that enter one clearance only can add to its gap, ascending. Of equal sums the one with the least side burden stays: margin
/// and distance depend on the sum alone, so nothing that could win is lost. A margin falls off on both sides of its peak, and a distance
/// grows on both sides of the target, so the best sum is next to one place and found by halving.
/// </summary>
internal sealed class PrivateSums
{
    private readonly int[] _choices;
    private readonly long[] _sums;
    private readonly Side[] _sides;
    private readonly int[][] _picks;

    private PrivateSums(int[] choices, (long Sum, Side Side, int[] Picks)[] sums)
    {
        _choices = choices;
        _sums = [.. sums.Select(s => s.Sum)];
        _sides = [.. sums.Select(s => s.Side)];
        _picks = [.. sums.Select(s => s.Picks)];
    }

    /// <summary>All sums of some choices of a loop.</summary>
    public static PrivateSums Of((int Choice, long Coefficient)[] own, CompiledOption[][] options, int[][] allowed)
    {
        (long Sum, Side Side, int[] Picks)[] sums = [(0, default, [])];
        foreach (var (choice, coefficient) in own)
        {
            sums =
            [
                .. from sum in sums
                   from pick in allowed[choice]
                   let option = options[choice][pick]
                   group (Sum: sum.Sum + (coefficient * option.Amount), Side: sum.Side + option.Side, Picks: (int[])[.. sum.Picks, pick]) by sum.Sum + (coefficient * option.Amount)
                   into same
                   orderby same.Key
                   select same.MinBy(s => s.Side),
            ];
        }

        return new PrivateSums([.. own.Select(o => o.Choice)], sums);
    }

    /// <summary>The largest margin that a loop can have when the rest of it leaves so much gap.</summary>
    public long BestMargin(CompiledLoop loop, long rest)
    {
        var peak = loop.Peak;
        if (peak == long.MinValue)
            return loop.Margin(rest + _sums[0]);
        if (peak == long.MaxValue)
            return loop.Margin(rest + _sums[^1]);
        var after = FirstAtLeast(peak - rest);
        var best = long.MinValue;
        if (after < _sums.Length)
            best = loop.Margin(rest + _sums[after]);
        if (after > 0)
            best = Math.Max(best, loop.Margin(rest + _sums[after - 1]));
        return best;
    }

    /// <summary>The least burden with the gap between two ends, and which sum has it; −1 when none is between them.</summary>
    public (Int128 Burden, int Sum) LeastBurden(CompiledLoop loop, long rest, (long Low, long High) gaps, Burdens burdens)
    {
        if (gaps.Low > gaps.High)
            return (LeastSum.Impossible, -1);
        var after = FirstAtLeast(Math.Clamp(loop.Target, gaps.Low, gaps.High) - rest);
        var best = (Burden: LeastSum.Impossible, Sum: -1);
        for (var i = Math.Max(0, after - 1); i <= after && i < _sums.Length; i++)
        {
            var gap = rest + _sums[i];
            if (gap < gaps.Low || gap > gaps.High)
                continue;
            var burden = burdens.Of(loop.Distance(gap), _sides[i]);
            if (burden < best.Burden)
                best = (burden, i);
        }

        return best;
    }

    /// <summary>Writes the options of one sum into a complete choice.</summary>
    public void Write(int sum, int[] picks)
    {
        for (var i = 0; i < _choices.Length; i++)
            picks[_choices[i]] = _picks[sum][i];
    }

    private int FirstAtLeast(long wanted)
    {
        var (low, high) = (0, _sums.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (_sums[middle] < wanted)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }
}
