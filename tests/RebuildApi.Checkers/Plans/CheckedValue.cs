using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Plans;

/// <summary>What the checker knows of a value: lengths in nanometres, all else in SI.</summary>
/// <param name="Point">The value; none when it is only bounded.</param>
/// <param name="U">Standard uncertainty.</param>
/// <param name="Freedom">Its degrees of freedom; infinite when nothing was repeated.</param>
/// <param name="From">What it rests on.</param>
/// <param name="Low">Lower bound, where only bounds are known.</param>
/// <param name="High">Upper bound.</param>
public sealed record CheckedValue(double? Point, double U, double Freedom, EstimateBasis From, double? Low = null, double? High = null)
{
    /// <summary>A value without doubt.</summary>
    public static CheckedValue Exactly(double value) => new(value, 0, double.PositiveInfinity, EstimateBasis.Measured);

    /// <summary>From the lines of a budget: u² = Σ uᵢ², ν = u⁴ / Σ uᵢ⁴/νᵢ (JCGM 100:2008, 5.1.2 and G.4.1).</summary>
    public static CheckedValue Of(double point, EstimateBasis from, IEnumerable<(double U, double Freedom)> lines)
    {
        var all = lines.ToArray();
        var u = Math.Sqrt(all.Sum(l => l.U * l.U));
        var bent = all.Where(l => !double.IsInfinity(l.Freedom)).Sum(l => Math.Pow(l.U, 4) / l.Freedom);
        return new CheckedValue(point, u, bent > 0 ? Math.Pow(u, 4) / bent : double.PositiveInfinity, from);
    }

    /// <summary>Σ factor × value of independent values; none when one is only bounded.</summary>
    public static CheckedValue? Sum(IReadOnlyCollection<(double Factor, CheckedValue Value)> terms, EstimateBasis from) => terms.Any(t => t.Value.Point is null)
        ? null
        : Of(terms.Sum(t => t.Factor * t.Value.Point!.Value), from, terms.Select(t => (Math.Abs(t.Factor) * t.Value.U, t.Value.Freedom)));

    /// <summary>A quantity as a plain number of this scale.</summary>
    public static double? Number(Quantity? quantity) => quantity switch { Exact e => e.Value.Nanometres, Real r => r.Si, _ => null };
}
