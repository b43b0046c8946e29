using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;

namespace RebuildApi.Engine.Selection;

/// <summary>The gaps that the shop's decision rule calls conforming at a given uncertainty, to the nanometre.</summary>
/// <param name="Low">The smallest, or none when there is no limit below.</param>
/// <param name="High">The largest, or none; below the low one when the window is too narrow for the uncertainty.</param>
public readonly record struct GuardedWindow(Length? Low, Length? High)
{
    /// <summary>Finds the ends with the very rule that judges, so that a gap inside is judged conforming and one outside is not.</summary>
    /// <param name="window">A window of lengths.</param>
    /// <param name="standardUncertainty">Standard uncertainty of the gap, metres.</param>
    /// <param name="degreesOfFreedom">Its degrees of freedom; none means infinite.</param>
    /// <param name="policy">The decision rule.</param>
    public static GuardedWindow Of(Limits window, double standardUncertainty, double? degreesOfFreedom, Policy policy)
    {
        var gap = new Estimate(null, standardUncertainty, degreesOfFreedom, null, null, EstimateBasis.Measured, []);
        if (window is { Low: Exact low, High: Exact high })
        {
            var middle = new Length(low.Value.Nanometres + ((high.Value.Nanometres - low.Value.Nanometres) / 2));
            if (Conforms(window, gap, middle, policy))
                return new GuardedWindow(Turn(low.Value, middle), Turn(high.Value, middle));
            return new GuardedWindow(middle + new Length(1), middle);
        }

        var far = new Length(1 + Length.NearestToMetres(1e3 * standardUncertainty).Nanometres);
        return window.Low is Exact only
            ? new GuardedWindow(Turn(only.Value, only.Value + far), null)
            : new GuardedWindow(null, Turn(((Exact)window.High!).Value, ((Exact)window.High).Value - far));

        // The conforming gap nearest to an end of the window, by halving between the end and a gap that conforms.
        Length Turn(Length end, Length conforming)
        {
            if (Conforms(window, gap, end, policy))
                return end;
            var (outside, inside) = (end.Nanometres, conforming.Nanometres);
            while (Math.Abs(inside - outside) > 1)
            {
                var between = outside + ((inside - outside) / 2);
                if (Conforms(window, gap, new Length(between), policy))
                    inside = between;
                else
                    outside = between;
            }

            return new Length(inside);
        }
    }

    private static bool Conforms(Limits window, Estimate gap, Length value, Policy policy)
    {
        var scale = new Measuring.Scale(Dimension.Length);
        return Decision.Of(value.Nanometres, Window.Of(window, gap, scale), policy) == Outcome.Conforming;
    }
}
