using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.MonteCarlo;

namespace RebuildApi.Engine.Selection;

/// <summary>
/// The chance that all clearances of a choice lie in their windows together, by Monte Carlo (JCGM 101:2008). A part or a piece that sits in several
/// clearances is drawn once for all of them; that is why the chances of single clearances must not be multiplied.
/// </summary>
internal sealed class JointChance
{
    private readonly ImmutableArray<UnitLoop> _loops;
    private readonly ImmutableArray<Limits> _windows;
    private readonly List<InputDistribution> _inputs = [];
    private readonly List<(int Input, double Coefficient)>[] _weights;

    /// <summary>Makes the inputs ready.</summary>
    /// <param name="loops">The clearances, in the order of the problem.</param>
    /// <param name="book">The unit.</param>
    /// <param name="request">Which series are chosen from.</param>
    public JointChance(ImmutableArray<UnitLoop> loops, EstimateBook book, SelectionRequest request)
    {
        _loops = loops;
        _windows = [.. loops.Select(l => WindowOf.Loop(l.Loop, book.View.Snapshot.Policy))];
        _weights = [.. loops.Select(_ => new List<(int, double)>())];
        var byName = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var l = 0; l < loops.Length; l++)
        {
            foreach (var (name, coefficient, distribution) in Sources(loops[l], book, request))
            {
                if (!byName.TryGetValue(name, out var input))
                {
                    byName[name] = input = _inputs.Count;
                    _inputs.Add(distribution);
                }

                _weights[l].Add((input, coefficient));
            }
        }
    }

    /// <summary>The chance for one choice, 0..1.</summary>
    public double Of(SelectionSolution solution)
    {
        var gaps = solution.Gaps.Select(g => g.Gap.InMetres).ToArray();
        if (_inputs.Count == 0)
            return Smallest(gaps, []) >= 0 ? 1 : 0;
        var result = MonteCarloPropagation.Run(Models.Of(drawn => Smallest(gaps, drawn)), [.. _inputs], new MonteCarloOptions(Digits: 1, MaximumTrials: 1 << 16));
        return result.ChanceWithin(0, null);
    }

    /// <summary>The smallest distance of any gap to an end of its window, negative outside.</summary>
    private double Smallest(double[] gaps, double[] drawn)
    {
        var smallest = double.PositiveInfinity;
        for (var l = 0; l < _loops.Length; l++)
        {
            var gap = gaps[l];
            foreach (var (input, coefficient) in _weights[l])
                gap += coefficient * drawn[input];
            if (_windows[l].Low is { } low)
                smallest = Math.Min(smallest, gap - low.InSi);
            if (_windows[l].High is { } high)
                smallest = Math.Min(smallest, high.InSi - gap);
        }

        return smallest;
    }

    private static IEnumerable<(string Name, double Coefficient, InputDistribution Distribution)> Sources(UnitLoop loop, EstimateBook book, SelectionRequest request)
    {
        // A gap that a trial assembly has a say in has a doubt of its own, which no other clearance shares.
        if (loop.State.Trial is not null && loop.State.Combined.StandardUncertainty > 0)
            yield return (loop.Loop.Id, 1, new NormalInput(0, loop.State.Combined.StandardUncertainty));
        else if (loop.State.Trial is null)
        {
            foreach (var term in loop.State.Parts.Terms.Where(t => t.Estimate.StandardUncertainty > 0))
                yield return (term.Name, Coefficient(term.Term), DistributionOf(term.Estimate));
        }

        foreach (var term in loop.Loop.Terms)
        {
            if (term.Of is OfSeries of && book.View.Family.Series[request.Series.GetValueOrDefault(of.Position, of.Series)].Tolerance is var tolerance && tolerance > Length.Zero)
                yield return (of.Position, Coefficient(term) * Math.Sqrt(of.MaxPieces), new RectangularInput(-tolerance.InMetres, tolerance.InMetres));
        }
    }

    private static double Coefficient(Term term) => (double)term.Numerator / term.Denominator;

    private static InputDistribution DistributionOf(Estimate estimate)
    {
        var u = estimate.StandardUncertainty;
        if (estimate.Basis == EstimateBasis.Drawing)
            return new RectangularInput(-u * Math.Sqrt(3), u * Math.Sqrt(3));
        return estimate.DegreesOfFreedom is > 2 and var freedom ? new StudentInput(0, u, freedom) : new NormalInput(0, u);
    }
}
