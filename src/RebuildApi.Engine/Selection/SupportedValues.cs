namespace RebuildApi.Engine.Selection;

/// <summary>Rules out values of shared choices that no combination of some clearance supports at a given margin, until nothing more falls.</summary>
internal static class SupportedValues
{
    /// <summary>The values that stay, for each variable; never none when the margin can be had at all.</summary>
    public static int[][] Of(Factor<long>[] margins, int[] sizes, long margin)
    {
        var stays = sizes.Select(s => Enumerable.Repeat(true, s).ToArray()).ToArray();
        bool changed;
        do
        {
            changed = false;
            foreach (var factor in margins)
                changed |= Narrow(factor, sizes, margin, stays);
        }
        while (changed);
        return [.. stays.Select(s => Enumerable.Range(0, s.Length).Where(i => s[i]).ToArray())];
    }

    private static bool Narrow(Factor<long> factor, int[] sizes, long margin, bool[][] stays)
    {
        var supported = factor.Variables.Select(v => new bool[sizes[v]]).ToArray();
        var at = new int[factor.Variables.Length];
        for (var entry = 0; entry < factor.Table.Length; entry++)
        {
            if (factor.Table[entry] >= margin && AllStay(factor.Variables, at, stays))
            {
                for (var i = 0; i < at.Length; i++)
                    supported[i][at[i]] = true;
            }

            Advance(at, factor.Variables, sizes);
        }

        var changed = false;
        for (var i = 0; i < at.Length; i++)
            changed |= Drop(stays[factor.Variables[i]], supported[i]);
        return changed;
    }

    private static bool Drop(bool[] stays, bool[] supported)
    {
        var changed = false;
        for (var value = 0; value < stays.Length; value++)
        {
            changed |= stays[value] && !supported[value];
            stays[value] &= supported[value];
        }

        return changed;
    }

    private static bool AllStay(int[] variables, int[] at, bool[][] stays)
    {
        for (var i = 0; i < at.Length; i++)
        {
            if (!stays[variables[i]][at[i]])
                return false;
        }

        return true;
    }

    private static void Advance(int[] at, int[] variables, int[] sizes)
    {
        for (var i = at.Length - 1; i >= 0; i--)
        {
            if (++at[i] < sizes[variables[i]])
                return;
            at[i] = 0;
        }
    }
}
