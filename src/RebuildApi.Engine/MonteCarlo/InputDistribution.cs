namespace RebuildApi.Engine.MonteCarlo;

/// <summary>What is known of one input, as a distribution (JCGM 101:2008, clause 6). Plain numbers: the caller keeps the unit.</summary>
public abstract record InputDistribution
{
    private protected InputDistribution()
    {
    }

    /// <summary>The best estimate.</summary>
    public abstract double Mean { get; }

    /// <summary>Standard uncertainty as the budget takes it.</summary>
    public abstract double StandardUncertainty { get; }

    /// <summary>Degrees of freedom; null for infinite.</summary>
    public virtual double? DegreesOfFreedom => null;

    /// <summary>Fills a block with draws; its length is a multiple of <see cref="UniformStream.Lanes"/>.</summary>
    internal abstract void Draw(ref UniformStream stream, Span<double> block);
}

/// <summary>Normal.</summary>
/// <param name="Centre">Mean.</param>
/// <param name="Sigma">Standard deviation, not negative.</param>
public sealed record NormalInput(double Centre, double Sigma) : InputDistribution
{
    /// <inheritdoc/>
    public override double Mean => Centre;

    /// <inheritdoc/>
    public override double StandardUncertainty => Sigma;

    internal override void Draw(ref UniformStream stream, Span<double> block)
    {
        stream.Fill(block);
        NormalNumbers.FromUniforms(block);
        foreach (ref var x in block)
            x = Centre + Sigma * x;
    }
}

/// <summary>Scaled and shifted Student's t: the mean of a few readings.</summary>
/// <param name="Centre">Mean.</param>
/// <param name="Scale">s/√n, which the budget of JCGM 100 takes as the standard uncertainty.</param>
/// <param name="Freedom">Degrees of freedom, positive.</param>
public sealed record StudentInput(double Centre, double Scale, double Freedom) : InputDistribution
{
    /// <inheritdoc/>
    public override double Mean => Centre;

    /// <inheritdoc/>
    public override double StandardUncertainty => Scale;

    /// <inheritdoc/>
    public override double? DegreesOfFreedom => Freedom;

    /// <summary>t = √(ν(u^(−2/ν) − 1))·cos 2πv (Bailey, Mathematics of Computation 62, 1994).</summary>
    internal override void Draw(ref UniformStream stream, Span<double> block)
    {
        Span<double> turns = stackalloc double[block.Length];
        stream.Fill(block);
        stream.Fill(turns);
        for (var i = 0; i < block.Length; i++)
        {
            var radius = Math.Sqrt(Freedom * (Math.Exp(-2 / Freedom * Math.Log(block[i])) - 1));
            block[i] = Centre + Scale * radius * Math.Cos(2 * Math.PI * turns[i]);
        }
    }
}

/// <summary>Equally likely between two ends.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public sealed record RectangularInput(double Low, double High) : InputDistribution
{
    /// <inheritdoc/>
    public override double Mean => (Low + High) / 2;

    /// <inheritdoc/>
    public override double StandardUncertainty => (High - Low) / 2 / Math.Sqrt(3);

    internal override void Draw(ref UniformStream stream, Span<double> block)
    {
        stream.Fill(block);
        foreach (ref var x in block)
            x = Low + (High - Low) * x;
    }
}

/// <summary>Likeliest in the middle, falling straight to two ends.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public sealed record TriangularInput(double Low, double High) : InputDistribution
{
    /// <inheritdoc/>
    public override double Mean => (Low + High) / 2;

    /// <inheritdoc/>
    public override double StandardUncertainty => (High - Low) / 2 / Math.Sqrt(6);

    internal override void Draw(ref UniformStream stream, Span<double> block)
    {
        Span<double> other = stackalloc double[block.Length];
        stream.Fill(block);
        stream.Fill(other);
        for (var i = 0; i < block.Length; i++)
            block[i] = Low + (High - Low) / 2 * (block[i] + other[i]);
    }
}

/// <summary>Likeliest at its two ends: a value that swings as a sine, a temperature for one.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public sealed record ArcsineInput(double Low, double High) : InputDistribution
{
    /// <inheritdoc/>
    public override double Mean => (Low + High) / 2;

    /// <inheritdoc/>
    public override double StandardUncertainty => (High - Low) / 2 / Math.Sqrt(2);

    internal override void Draw(ref UniformStream stream, Span<double> block)
    {
        stream.Fill(block);
        foreach (ref var x in block)
            x = Mean + (High - Low) / 2 * Math.Sin(2 * Math.PI * x);
    }
}

/// <summary>Equally likely between two ends that are themselves only known to ± <paramref name="EndHalfWidth"/> (JCGM 101:2008, 6.4.3).</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
/// <param name="EndHalfWidth">Half-width of what is not known of the ends, below half their distance.</param>
public sealed record TrapezoidInput(double Low, double High, double EndHalfWidth) : InputDistribution
{
    /// <inheritdoc/>
    public override double Mean => (Low + High) / 2;

    /// <inheritdoc/>
    public override double StandardUncertainty => Math.Sqrt((High - Low) * (High - Low) / 12 + EndHalfWidth * EndHalfWidth / 9);

    internal override void Draw(ref UniformStream stream, Span<double> block)
    {
        Span<double> end = stackalloc double[block.Length];
        stream.Fill(end);
        stream.Fill(block);
        for (var i = 0; i < block.Length; i++)
        {
            var low = Low - EndHalfWidth + 2 * EndHalfWidth * end[i];
            block[i] = low + (Low + High - 2 * low) * block[i];
        }
    }
}
