using System.Globalization;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>
/// Values of one dimension as doubles: lengths as whole nanometres, which a double holds exactly up to 9000 km, all else in SI.
/// </summary>
/// <param name="Dimension">What is counted.</param>
internal readonly record struct Scale(Dimension Dimension)
{
    /// <summary>SI units in one step of the scale.</summary>
    public double InSi => Dimension == Dimension.Length ? 1e-9 : 1;

    /// <summary>A quantity on the scale; null when it is of another dimension.</summary>
    public double? Of(Quantity? quantity) => quantity switch
    {
        Exact exact when Dimension == Dimension.Length => exact.Value.Nanometres,
        Real real when real.Dimension == Dimension => real.Si,
        _ => null,
    };

    /// <summary>The quantity at a point of the scale; lengths go to the nearest whole nanometre.</summary>
    public Quantity Quantity(double point) => Dimension == Dimension.Length
        ? new Exact(new Length(checked((long)Math.Round(point, MidpointRounding.AwayFromZero))))
        : new Real(point, Dimension);

    /// <summary>The quantity nearest to a value in SI.</summary>
    public Quantity FromSi(double si) => Quantity(si / InSi);

    /// <summary>
    /// One unit of the last digit that was sent, on this scale: the least a reading without a known instrument can hide; none for a count,
    /// which is exact; null where it cannot be told.
    /// </summary>
    /// <param name="reading">A plain reading.</param>
    public double? LastDigit(Reading reading)
    {
        if (Dimension == Dimension.Count)
            return 0;
        if (Of(reading) is not { } point || !decimal.TryParse(reading.AsSent, NumberStyles.Float, CultureInfo.InvariantCulture, out var sent) || sent == 0)
            return null;
        var decimals = (int)sent.Scale;
        return Math.Abs(point / (double)sent) * Math.Pow(10, -decimals);
    }

    /// <summary>The point itself, or for lengths the whole nanometre below it.</summary>
    public double Settled(double point) => Dimension == Dimension.Length ? Math.Floor(point) : point;

    /// <summary>The next point that can be told from this one: a nanometre away for lengths.</summary>
    /// <param name="point">On the scale; whole for lengths.</param>
    /// <param name="direction">+1 or −1.</param>
    public double Beside(double point, int direction) => Dimension == Dimension.Length
        ? point + direction
        : direction > 0 ? Math.BitIncrement(point) : Math.BitDecrement(point);

    /// <summary>The value of a plain reading on the scale; null when it is a bound or of another dimension.</summary>
    public double? Of(Reading reading) => !reading.IsValue
        ? null
        : Dimension == Dimension.Length ? reading.Low?.Nanometres : reading.Si;
}
