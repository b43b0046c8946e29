namespace RebuildApi.Engine.Diagnosis;

/// <summary>
/// Exact inference by variable elimination, run forwards for the sum of products Z and backwards for its derivative by every entry of every table
/// (A. Darwiche, "A differential approach to inference in Bayesian networks", Journal of the ACM 50, 2003). One pass each way gives all marginals and,
/// since Z is linear in each entry, how Z changes when any entry does.
/// </summary>
internal sealed class Elimination
{
    private readonly EliminationPlan _plan;
    private readonly double[][] _values;
    private readonly double[][] _slopes;

    /// <summary>Runs a plan over tables whose scopes it was made for. They are only read.</summary>
    public Elimination(EliminationPlan plan, IReadOnlyList<double[]> tables)
    {
        _plan = plan;
        _values = new double[plan.Tables][];
        _slopes = new double[plan.Tables][];
        for (var i = 0; i < tables.Count; i++)
            _values[i] = tables[i];
        for (var i = 0; i < plan.Steps.Length; i++)
            _values[tables.Count + i] = Forward(plan.Steps[i]);
        Z = plan.Constants.Aggregate(1.0, (z, table) => z * _values[table][0]);
        Backward(tables.Count);
    }

    /// <summary>The sum over all states of the product of all tables: the probability of what was seen.</summary>
    public double Z { get; }

    /// <summary>dZ by one entry of one of the tables given.</summary>
    public double Slope(int table, int entry) => _slopes[table][entry];

    private double[] Forward(EliminationPlan.Step step)
    {
        var result = new double[step.States / 2];
        for (var state = 0; state < step.States; state++)
        {
            var product = 1.0;
            foreach (var input in step.Inputs)
                product *= _values[input.Table][input.Index[state]];
            result[state >> 1] += product;
        }

        return result;
    }

    private void Backward(int given)
    {
        for (var table = 0; table < _slopes.Length; table++)
            _slopes[table] = new double[_values[table].Length];
        foreach (var table in _plan.Constants)
            _slopes[table][0] = _plan.Constants.Where(other => other != table).Aggregate(1.0, (z, other) => z * _values[other][0]);
        for (var i = _plan.Steps.Length - 1; i >= 0; i--)
            Backward(_plan.Steps[i], _slopes[given + i]);
    }

    // The slope by one input is the slope by the result times the product of the other inputs, gathered from both ends without dividing.
    private void Backward(EliminationPlan.Step step, double[] result)
    {
        Span<double> before = stackalloc double[step.Inputs.Length <= 128 ? step.Inputs.Length : 0];
        if (before.Length == 0)
            before = new double[step.Inputs.Length];
        for (var state = 0; state < step.States; state++)
        {
            var product = result[state >> 1];
            for (var i = 0; i < before.Length; i++)
            {
                before[i] = product;
                product *= _values[step.Inputs[i].Table][step.Inputs[i].Index[state]];
            }

            var after = 1.0;
            for (var i = before.Length - 1; i >= 0; i--)
            {
                var (table, entry) = (step.Inputs[i].Table, step.Inputs[i].Index[state]);
                _slopes[table][entry] += before[i] * after;
                after *= _values[table][entry];
            }
        }
    }
}
