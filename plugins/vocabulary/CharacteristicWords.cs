namespace FamilyWords;

/// <summary>Words for what can be measured on a part. A characteristic starts as one reading, judged by its mean, and is told what differs.</summary>
internal static class CharacteristicWords
{
    public static Characteristic Size(string id, string name) => Plain(id, name, Dimension.Length);

    public static Characteristic Angle(string id, string name) => Plain(id, name, Dimension.Angle).By("profile-projector");

    public static Characteristic Force(string id, string name) => Plain(id, name, Dimension.Force).By("bench-scale");

    public static Characteristic Torque(string id, string name) => Plain(id, name, Dimension.Torque).By("torque-gauge");

    public static Characteristic Hardness(string id, string name) => Plain(id, name, Dimension.Hardness).By("hardness-tester");

    public static Characteristic Number(string id, string name) => Plain(id, name, Dimension.Count).By("eye");

    /// <summary>Limits of a new part.</summary>
    public static Characteristic New(this Characteristic c, Limits limits) => c with { New = limits };

    /// <summary>Limits to go back into service.</summary>
    public static Characteristic Service(this Characteristic c, Limits limits) => c with { Service = limits };

    /// <summary>The smallest reading counts: a worn shaft is as thin as its thinnest plane.</summary>
    public static Characteristic Thinnest(this Characteristic c, int readings) => c with { Report = Statistic.Min, MinimumReadings = readings };

    /// <summary>The largest reading counts: a worn bore is as wide as its widest plane.</summary>
    public static Characteristic Widest(this Characteristic c, int readings) => c with { Report = Statistic.Max, MinimumReadings = readings };

    public static Characteristic BothEnds(this Characteristic c, int readings) => c with { Report = Statistic.MinAndMax, MinimumReadings = readings };

    /// <summary>Largest minus smallest: runout, ovality, warp.</summary>
    public static Characteristic Spread(this Characteristic c, int readings) => c with { Report = Statistic.Spread, MinimumReadings = readings };

    public static Characteristic Averaged(this Characteristic c, int readings) => c with { Report = Statistic.Mean, MinimumReadings = readings };

    public static Characteristic By(this Characteristic c, params string[] instruments) => c with { Methods = [.. instruments] };

    /// <summary>A dimension that does not wear: until it is read, it may be taken from the drawing.</summary>
    public static Characteristic DrawingHolds(this Characteristic c) => c with { Unmeasured = Distribution.Rectangular };

    public static Characteristic Functional(this Characteristic c) => c with { Criticality = Criticality.Functional };

    public static Characteristic SafetyCritical(this Characteristic c) => c with { Criticality = Criticality.SafetyCritical };

    public static Characteristic Follows(this Characteristic c, params Term[] terms) => c with { DerivedFrom = new Linear([.. terms]), Methods = [] };

    /// <summary>A term of a derived characteristic: a whole or broken share of another one of the same part.</summary>
    public static Term Of(string characteristic, int numerator = 1, int denominator = 1) =>
        new(new OfPart(new Address("", characteristic)), numerator, denominator);

    public static Term Constant(Length length, int numerator = 1, int denominator = 1) => new(new Fixed(length), numerator, denominator);

    private static Characteristic Plain(string id, string name, Dimension dimension) => new(
        id, Text.English(id, name), dimension, Statistic.Mean, 1, null, null, Distribution.None, Criticality.Ordinary, null, []);
}
