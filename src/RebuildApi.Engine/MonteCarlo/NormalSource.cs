namespace RebuildApi.Engine.MonteCarlo;

/// <summary>Standard normal numbers one by one, for simulations that are not blocks. The same seed gives the same numbers.</summary>
/// <param name="seed">Where the numbers begin.</param>
internal sealed class NormalSource(ulong seed)
{
    private readonly double[] _block = new double[256];
    private UniformStream _stream = new(seed, 0);
    private int _used = 256;

    /// <summary>The next number.</summary>
    public double Next()
    {
        if (_used == _block.Length)
        {
            _stream.Fill(_block);
            NormalNumbers.FromUniforms(_block);
            _used = 0;
        }

        return _block[_used++];
    }

    /// <summary>A χ² number: the sum of squares of ν normal ones.</summary>
    public double ChiSquare(int degreesOfFreedom)
    {
        var sum = 0.0;
        for (var i = 0; i < degreesOfFreedom; i++)
        {
            var z = Next();
            sum += z * z;
        }

        return sum;
    }
}
