using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.MonteCarlo;

namespace RebuildApi.Engine.Conformity;

/// <summary>One verdict in doubt, and what may come of reading again. Everything is on the scale of the readings.</summary>
internal sealed class SettlingTrial
{
    private readonly Scale _scale;
    private readonly Window _window;
    private readonly Policy _policy;
    private readonly double _mean;
    private readonly int _count;
    private readonly double _scatter;
    private readonly int _freedom;
    private readonly double _systematic;
    private readonly double _step;
    private readonly double _uncertainty;

    public SettlingTrial(ReadingSet readings, Estimate value, Limits limits, Policy policy)
    {
        _scale = readings.Scale;
        _window = Window.Of(limits, value, _scale);
        _policy = policy;
        _mean = _scale.Of(value.Value)!.Value;
        _count = readings.Values.Length;
        _step = readings.Values.Max(v => v.Step);
        _uncertainty = value.StandardUncertainty / _scale.InSi;
        var repeatability = value.Budget.FirstOrDefault(l => l.Name == "repeatability");
        _freedom = (int)(repeatability?.DegreesOfFreedom ?? 0);
        _scatter = (repeatability?.StandardUncertainty ?? 0) / _scale.InSi * Math.Sqrt(_count);
        _systematic = Budget.Combined(value.Budget.Where(l => l.Name != "repeatability")) / _scale.InSi;
    }

    /// <summary>n more readings with the instruments that were used: only the scatter shrinks.</summary>
    public Func<NormalSource, Outcome> WithMore(int n) => source =>
    {
        // σ² given s² with ν degrees of freedom is s²·ν/χ²(ν); the mean that these instruments would settle on is x̄ ± σ/√n.
        var sigma = _freedom > 0 ? _scatter * Math.Sqrt(_freedom / source.ChiSquare(_freedom)) : 0;
        var settled = _mean + sigma / Math.Sqrt(_count) * source.Next();
        var (mean, squares) = Read(source, settled, sigma, n, _step);
        var all = _count + n;
        var together = (_count * _mean + n * mean) / all;
        var sum = _scatter * _scatter * _freedom + squares + (double)_count * n / all * (mean - _mean) * (mean - _mean);
        return Judge(together, Math.Sqrt(sum / (all - 1) / all), all - 1, _systematic);
    };

    /// <summary>n readings with another instrument, which then stand alone.</summary>
    public Func<NormalSource, Outcome> WithOther(InstrumentState other, int n)
    {
        var step = _scale.Of(other.Resolution) ?? 0;
        var (limitOfError, reference) = (InstrumentErrors.OfLimit(other, _scale), InstrumentErrors.OfReference(other, _scale));
        var limit = Math.Sqrt(limitOfError * limitOfError + reference * reference);
        var systematic = Math.Sqrt(limit * limit + InstrumentErrors.OfStep(step) * InstrumentErrors.OfStep(step));
        return source =>
        {
            var sigma = _freedom > 0 ? _scatter * Math.Sqrt(_freedom / source.ChiSquare(_freedom)) : 0;
            var truth = _mean + Spread(source) * source.Next();
            var (mean, squares) = Read(source, truth + limit * source.Next(), sigma, n, step);
            return Judge(mean, n > 1 ? Math.Sqrt(squares / (n - 1) / n) : 0, n - 1, systematic);
        };

        // The value as it is known now: Student's t with its effective degrees of freedom.
        double Spread(NormalSource source) => _window.DegreesOfFreedom is { } nu && nu < 200
            ? _uncertainty * Math.Sqrt(Math.Ceiling(nu) / source.ChiSquare((int)Math.Ceiling(nu)))
            : _uncertainty;
    }

    /// <summary>Readings of a value, rounded to the step: their mean and the sum of squares about it.</summary>
    private static (double Mean, double Squares) Read(NormalSource source, double value, double sigma, int n, double step)
    {
        var readings = new double[n];
        for (var i = 0; i < n; i++)
        {
            var raw = value + sigma * source.Next();
            readings[i] = step > 0 ? Math.Round(raw / step) * step : raw;
        }

        var mean = readings.Average();
        return (mean, readings.Sum(r => (r - mean) * (r - mean)));
    }

    private Outcome Judge(double mean, double repeatability, int freedom, double systematic)
    {
        var lines = new[]
        {
            new Contribution("repeatability", repeatability, freedom > 0 ? freedom : null, 0),
            new Contribution("systematic", systematic, null, 0),
        };
        var budget = Budget.Shared(lines);
        return Decision.Of(
            mean, _window with { Uncertainty = Budget.Combined(budget), DegreesOfFreedom = Budget.EffectiveDegreesOfFreedom(budget) }, _policy);
    }
}
