namespace RebuildApi.Engine.MonteCarlo;

/// <summary>A model Y = f(X₁ … X_N), evaluated for many trials at once.</summary>
/// <param name="inputs">One array of draws for each input.</param>
/// <param name="results">One value for each trial.</param>
public delegate void Model(double[][] inputs, Span<double> results);

/// <summary>Makes models.</summary>
public static class Models
{
    /// <summary>Y = c₀ + Σ cᵢ·Xᵢ.</summary>
    public static Model Linear(double constant, params double[] coefficients) => (inputs, results) =>
    {
        results.Fill(constant);
        for (var n = 0; n < coefficients.Length; n++)
        {
            var (draws, factor) = (inputs[n], coefficients[n]);
            for (var i = 0; i < results.Length; i++)
                results[i] += factor * draws[i];
        }
    };

    /// <summary>Any function of one trial's inputs. It must not keep the array that it is given.</summary>
    public static Model Of(Func<double[], double> function) => (inputs, results) =>
    {
        var trial = new double[inputs.Length];
        for (var i = 0; i < results.Length; i++)
        {
            for (var n = 0; n < trial.Length; n++)
                trial[n] = inputs[n][i];
            results[i] = function(trial);
        }
    };
}
