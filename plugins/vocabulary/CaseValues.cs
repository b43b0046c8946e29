using System.Globalization;

namespace FamilyWords;

/// <summary>Values that lie clearly inside, below or above limits, by plain arithmetic on the ends that are declared, and how they are said.</summary>
internal static class CaseValues
{
    /// <summary>Twenty of the smallest steps in which a length is said: far beyond what the gauge of a worked case leaves in doubt.</summary>
    private const int Steps = 20;

    public static PartKind KindAt(Family family, string position) => family.Kinds.Single(k => k.Id == family.Positions.Single(p => p.Id == position).Kind);

    public static Characteristic CharacteristicAt(Family family, string at) =>
        at.Split('/', 2) is var parts ? KindAt(family, parts[0]).Characteristics.Single(c => c.Id == parts[1]) : throw new InvalidOperationException();

    /// <summary>The middle of the drawing, or of the limits to go back where there is no drawing; the position's own before the kind's.</summary>
    public static Quantity Nominal(Family family, string at, Length step)
    {
        var (position, name) = at.Split('/', 2) is var parts ? (parts[0], parts[1]) : default;
        var own = family.Positions.Single(p => p.Id == position).Overrides.FirstOrDefault(o => o.Characteristic == name);
        var c = CharacteristicAt(family, at);
        return Inside(own?.New ?? c.New ?? own?.Service ?? c.Service ?? throw new InvalidOperationException($"{at} has no limits."), step);
    }

    public static Quantity Inside(Limits limits, Length step) => limits switch
    {
        { Low: { } low, High: { } high } => Between(low, high, step),
        { Low: { } low } => Moved(low, Ample(limits, step)),
        { High: Exact high } => new Exact(new Length(high.Value.Nanometres / 2)),
        { High: { } high } => new Real(high.InSi / 2, high.Kind),
        _ => throw new InvalidOperationException(),
    };

    public static Quantity? Below(Limits limits, Length step) => limits.Low is { } low ? Moved(low, -Ample(limits, step)) : null;

    public static Quantity? Above(Limits limits, Length step) => limits.High is { } high ? Moved(high, Ample(limits, step)) : null;

    /// <summary>A quarter of the width, or a tenth of the only end; nanometres for a length, else SI.</summary>
    private static double Ample(Limits limits, Length step) => limits switch
    {
        { Low: Exact low, High: Exact high } => Math.Max(Steps * step.Nanometres, Rounded((high.Value - low.Value).Nanometres / 4, step)),
        { Low: { } low, High: { } high } => low.Kind == Dimension.Count ? 1 : (high.InSi - low.InSi) / 4,
        _ when (limits.Low ?? limits.High) is Exact end => Math.Max(Steps * step.Nanometres, Rounded(end.Value.Nanometres / 10, step)),
        _ => Math.Abs((limits.Low ?? limits.High)!.InSi) / 10,
    };

    private static Quantity Between(Quantity low, Quantity high, Length step) => (low, high) switch
    {
        (Exact a, Exact b) when (b.Value - a.Value).Nanometres >= Steps * step.Nanometres => new Exact(new Length(Rounded((a.Value.Nanometres + b.Value.Nanometres) / 2, step))),
        (Exact a, Exact b) => new Exact(new Length((a.Value.Nanometres + b.Value.Nanometres) / 2)),
        _ => new Real((low.InSi + high.InSi) / 2, low.Kind),
    };

    private static Quantity Moved(Quantity end, double by) =>
        end is Exact e ? new Exact(e.Value + new Length((long)by)) : new Real(end.InSi + by, end.Kind);

    private static long Rounded(long nanometres, Length step) => nanometres / step.Nanometres * step.Nanometres;

    /// <summary>A reading as a person would write it: inches or millimetres, degrees, newtons. Its value is that of the written number.</summary>
    public static Reading Reading(Quantity value)
    {
        if (value is Exact exact)
        {
            var nanometres = exact.Value.Nanometres;
            var (number, unit) = nanometres % 2540 == 0 && nanometres % 1000 != 0 ? (nanometres / 25_400_000m, "in") : (nanometres / 1_000_000m, "mm");
            return RebuildApi.Contracts.Reading.Of(exact.Value, number.ToString("0.########", CultureInfo.InvariantCulture), unit);
        }

        var (written, unitOf, toSi) = value.Kind switch
        {
            Dimension.Angle => (value.InSi * 180 / Math.PI, "deg", (Func<double, double>)Windows.Radians),
            Dimension.Force => (value.InSi, "N", v => v),
            Dimension.Torque => (value.InSi, "N.m", v => v),
            Dimension.Hardness => (value.InSi, "HV", v => v),
            Dimension.Count => (value.InSi, "pcs", v => v),
            _ => (value.InSi, "", v => v),
        };
        // All digits are written: the last one says how finely it was read.
        var said = Math.Round(written, 3);
        return new Reading(null, null, toSi(said), said.ToString(value.Kind == Dimension.Count ? "0" : "0.000", CultureInfo.InvariantCulture), unitOf, null);
    }

    public static Reading Zero(Reading like) => like with { Low = like.Low is null ? null : Length.Zero, High = like.High is null ? null : Length.Zero, Si = like.Si is null ? null : 0, AsSent = "0" };
}
