namespace FamilyWords;

/// <summary>Windows and lengths in the units in which a rebuilder says them. Ends are included.</summary>
internal static class Windows
{
    public static Length Inch(decimal value) => Length.Inches(value);

    public static Length Millimetre(decimal value) => Length.Millimetres(value);

    public static Limits In(decimal low, decimal high, decimal? target = null) =>
        Limits.Between(Inch(low), Inch(high), Demo, target is { } t ? Inch(t) : null);

    public static Limits InAtLeast(decimal low) => Limits.AtLeast(Inch(low), Demo);

    public static Limits InAtMost(decimal high) => Limits.AtMost(Inch(high), Demo);

    public static Limits Mm(decimal low, decimal high, decimal? target = null) =>
        Limits.Between(Millimetre(low), Millimetre(high), Demo, target is { } t ? Millimetre(t) : null);

    public static Limits MmAtLeast(decimal low) => Limits.AtLeast(Millimetre(low), Demo);

    public static Limits MmAtMost(decimal high) => Limits.AtMost(Millimetre(high), Demo);

    public static Limits Degrees(double low, double high) => Range(Radians(low), Radians(high), Dimension.Angle);

    public static Limits Newtons(double low, double high) => Range(low, high, Dimension.Force);

    public static Limits NewtonMetres(double low, double high) => Range(low, high, Dimension.Torque);

    public static Limits Litres(double low, double high) => Range(low / 1000, high / 1000, Dimension.Volume);

    public static Limits Celsius(double low, double high) => Range(low + 273.15, high + 273.15, Dimension.Temperature);

    public static Limits VickersAtLeast(double low) => new(new Real(low, Dimension.Hardness), null, null, Demo);

    /// <summary>So many, neither more nor fewer.</summary>
    public static Limits Exactly(int count) => Range(count, count, Dimension.Count);

    public static Limits Ratio(double low, double high) => Range(low, high, Dimension.Ratio);

    public static double Radians(double degrees) => degrees * Math.PI / 180;

    private static Limits Range(double low, double high, Dimension dimension) => new(new Real(low, dimension), new Real(high, dimension), null, Demo);
}
