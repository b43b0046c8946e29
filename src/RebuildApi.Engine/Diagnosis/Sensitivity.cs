namespace RebuildApi.Engine.Diagnosis;

/// <summary>
/// How far a probability moves when one judged number at a time goes to the ends of its range, the others staying at their best. Both the probability of
/// what was seen and that of it together with the cause are linear in each number, so the ends are exact:
/// P(cause | seen) = (P(cause, seen) + δ dP(cause, seen)) / (P(seen) + δ dP(seen)), with δ the step from the best to an end.
/// (E. Castillo, J. M. Gutiérrez and A. S. Hadi, "Sensitivity analysis in discrete Bayesian networks", IEEE Transactions on SMC 27, 1997.)
/// A number that two clues share is moved in each by itself.
/// </summary>
internal static class Sensitivity
{
    public static (double Low, double High, Judgeable? HangsOn) Of(int cause, double likely, Weighing weighing, Judgeable[] judged)
    {
        var (low, high, widest) = (likely, likely, 0.0);
        Judgeable? hangsOn = null;
        var given = weighing.With(cause);
        var i = 0;
        foreach (var together in weighing.Judged(given, cause))
        {
            var alone = judged[i++];
            var (a, b) = (At(together, alone, together.Range.Low), At(together, alone, together.Range.High));
            (low, high) = (Math.Min(low, Math.Min(a, b)), Math.Max(high, Math.Max(a, b)));
            if (Math.Abs(a - b) <= widest)
                continue;
            (widest, hangsOn) = (Math.Abs(a - b), together);
        }

        return (low, high, hangsOn);

        double At(Judgeable together, Judgeable alone, double end)
        {
            var step = end - together.Range.Best;
            return Math.Clamp((given.Z + step * together.Slope) / (weighing.All.Z + step * alone.Slope), 0, 1);
        }
    }
}
