using System.Collections.Immutable;

namespace RebuildApi.Engine.MonteCarlo;

/// <summary>
/// Propagation of distributions by Monte Carlo (JCGM 101:2008) with as many trials as the digits asked for need (7.9.4). Trials are drawn in
/// batches; batch b draws input i from stream (b, i), so that neither the number of threads nor the batches beyond the last one matter.
/// </summary>
public static class MonteCarloPropagation
{
    private const int BlockLength = 1024;
    private const int BlocksPerBatch = 16;
    private const int BatchLength = BlockLength * BlocksPerBatch;
    private const int LeastBatches = 4;
    private const int BatchesAtOnce = 4;

    /// <summary>Runs a model over its inputs until the digits asked for are sound, or the trials run out.</summary>
    /// <param name="model">The model.</param>
    /// <param name="inputs">Its inputs, independent of one another.</param>
    /// <param name="options">How.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option out of its range.</exception>
    public static MonteCarloResult Run(Model model, ImmutableArray<InputDistribution> inputs, MonteCarloOptions options)
    {
        Require(options);
        var batches = new List<Batch>();
        var most = Math.Max(LeastBatches, options.MaximumTrials / BatchLength);
        while (true)
        {
            foreach (var batch in Next(model, inputs, options, batches.Count, most))
            {
                batches.Add(batch);
                if (batches.Count >= LeastBatches && Stability.Of(batches, options.Digits) is { IsStable: true } stability)
                    return Result(batches, stability, options.Coverage);
            }

            if (batches.Count >= most)
                return Result(batches, Stability.Of(batches, options.Digits), options.Coverage);
        }
    }

    private static Batch[] Next(Model model, ImmutableArray<InputDistribution> inputs, MonteCarloOptions options, int first, int most)
    {
        var next = new Batch[Math.Min(BatchesAtOnce, most - first)];
        Parallel.For(
            0, next.Length, new ParallelOptions { MaxDegreeOfParallelism = options.Threads }, i => next[i] = Drawn(model, inputs, options, first + i));
        return next;
    }

    private static Batch Drawn(Model model, ImmutableArray<InputDistribution> inputs, MonteCarloOptions options, int batch)
    {
        var streams = inputs.Select((_, i) => new UniformStream(options.Seed, ((ulong)batch << 32) | (uint)i)).ToArray();
        var draws = inputs.Select(_ => new double[BlockLength]).ToArray();
        var results = new double[BatchLength];
        for (var block = 0; block < BlocksPerBatch; block++)
        {
            for (var i = 0; i < draws.Length; i++)
                inputs[i].Draw(ref streams[i], draws[i]);
            model(draws, results.AsSpan(block * BlockLength, BlockLength));
        }

        Array.Sort(results);
        return Batch.Of(results, options.Coverage);
    }

    private static MonteCarloResult Result(List<Batch> batches, Stability stability, double coverage)
    {
        var all = new double[batches.Count * BatchLength];
        for (var b = 0; b < batches.Count; b++)
            batches[b].Sorted.CopyTo(all, b * BatchLength);
        Array.Sort(all);
        var whole = Batch.Of(all, coverage);
        return new MonteCarloResult(
            whole.Mean, whole.StandardUncertainty, whole.Symmetric, Coverage.Shortest(all, coverage), all.Length, stability.Tolerance, stability.IsStable, all);
    }

    private static void Require(MonteCarloOptions options)
    {
        if (options.Coverage is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(options), options.Coverage, "A coverage probability lies between 0 and 1.");
        if (options.Digits is not (>= 1 and <= 4))
            throw new ArgumentOutOfRangeException(nameof(options), options.Digits, "From one to four digits.");
        if (options.Threads < 1)
            throw new ArgumentOutOfRangeException(nameof(options), options.Threads, "At least one thread.");
    }
}
