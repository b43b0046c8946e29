namespace RebuildApi.Engine.Planning.Solving;

/// <summary>Costs of the options of three or more choices together, the last choice running fastest.</summary>
internal sealed class WideTable(int[] choices, int[] sizes, long[] costs)
{
    /// <summary>A table with more open combinations than this waits until fewer are left.</summary>
    private const long MostLookedAt = 4096;

    private readonly long[][] _best = [.. sizes.Select(s => new long[s])];
    private readonly int[] _at = new int[choices.Length];

    public int[] Choices { get; } = choices;

    public long CostOf(ReadOnlySpan<int> picks)
    {
        var entry = 0;
        for (var i = 0; i < sizes.Length; i++)
            entry = (entry * sizes[i]) + picks[Choices[i]];
        return costs[entry];
    }

    /// <summary>The least cost that is still open; options without any are removed.</summary>
    /// <param name="domains">The open options.</param>
    /// <param name="changed">Set when an option was removed.</param>
    public long Narrow(Domains domains, ref bool changed)
    {
        var combinations = 1L;
        foreach (var choice in Choices)
            combinations *= domains.Size(choice);
        if (combinations is 0 or > MostLookedAt)
            return 0;
        foreach (var best in _best)
            Array.Fill(best, Network.Impossible);
        Walk(domains, 0, 0);
        return Prune(domains, ref changed);
    }

    private void Walk(Domains domains, int depth, int entry)
    {
        if (depth == Choices.Length)
        {
            for (var i = 0; i < _at.Length; i++)
                _best[i][_at[i]] = Math.Min(_best[i][_at[i]], costs[entry]);
            return;
        }

        foreach (var option in domains.Of(Choices[depth]))
        {
            _at[depth] = option;
            Walk(domains, depth + 1, (entry * sizes[depth]) + option);
        }
    }

    private long Prune(Domains domains, ref bool changed)
    {
        var least = Network.Impossible;
        for (var i = 0; i < Choices.Length; i++)
        {
            var options = domains.Of(Choices[i]).ToArray();
            least = options.Min(o => _best[i][o]);
            foreach (var option in options.Where(o => _best[i][o] >= Network.Impossible))
            {
                domains.Remove(Choices[i], option);
                changed = true;
            }
        }

        return least;
    }
}
