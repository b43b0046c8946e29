namespace FamilyWords;

/// <summary>Words for a closed loop of dimensions. Addresses are written <c>position/characteristic</c>.</summary>
internal static class ClearanceWords
{
    public static ClearanceLoop Clearance(string id, string name, string group, Limits window) =>
        new(id, Text.English($"clearance.{id}", name), group, [], window, null, TrialMethod.None, Criticality.Functional);

    /// <summary>Dimensions that open the gap.</summary>
    public static ClearanceLoop Opens(this ClearanceLoop loop, params string[] addresses) => loop.With(addresses, 1, 1);

    /// <summary>Dimensions that close the gap.</summary>
    public static ClearanceLoop Closes(this ClearanceLoop loop, params string[] addresses) => loop.With(addresses, -1, 1);

    /// <summary>Dimensions that count several times or in part: two rollers, half a diameter.</summary>
    public static ClearanceLoop Counts(this ClearanceLoop loop, int numerator, int denominator, params string[] addresses) =>
        loop.With(addresses, numerator, denominator);

    /// <summary>A selective piece that opens the gap.</summary>
    public static ClearanceLoop OpensWith(this ClearanceLoop loop, string series, string position, int pieces = 1) =>
        loop.Add(new Term(new OfSeries(series, position, pieces), 1));

    /// <summary>A selective piece that closes the gap.</summary>
    public static ClearanceLoop ClosesWith(this ClearanceLoop loop, string series, string position, int pieces = 1) =>
        loop.Add(new Term(new OfSeries(series, position, pieces), -1));

    /// <summary>A fixed length, signed.</summary>
    public static ClearanceLoop Fixed(this ClearanceLoop loop, Length length) => loop.Add(new Term(new Fixed(length), 1));

    /// <summary>It can be read on the assembly with known pieces fitted.</summary>
    public static ClearanceLoop ReadFitted(this ClearanceLoop loop) => loop with { Trial = TrialMethod.GapWithPieces };

    /// <summary>It can be read on the assembly under a stated load.</summary>
    public static ClearanceLoop ReadUnderLoad(this ClearanceLoop loop) => loop with { Trial = TrialMethod.UnderLoad };

    public static ClearanceLoop Ordinary(this ClearanceLoop loop) => loop with { Criticality = Criticality.Ordinary };

    public static ClearanceLoop SafetyCritical(this ClearanceLoop loop) => loop with { Criticality = Criticality.SafetyCritical };

    /// <summary>The temperatures at which it matters too, in degrees Celsius.</summary>
    public static ClearanceLoop BetweenCelsius(this ClearanceLoop loop, double cold, double hot, Limits? coldWindow = null, Limits? hotWindow = null) =>
        loop with { Thermal = new Thermal(cold + 273.15, hot + 273.15, coldWindow, hotWindow) };

    /// <summary>What happens when the gap is below its window, and what when it is above.</summary>
    public static ClearanceLoop Else(this ClearanceLoop loop, string below, string above) => loop with
    {
        WhenBelow = Text.English($"clearance.{loop.Id}.below", below),
        WhenAbove = Text.English($"clearance.{loop.Id}.above", above),
    };

    private static ClearanceLoop With(this ClearanceLoop loop, string[] addresses, int numerator, int denominator) => loop with
    {
        Terms = [.. loop.Terms, .. addresses.Select(a => new Term(new OfPart(Named(a)), numerator, denominator))],
    };

    private static ClearanceLoop Add(this ClearanceLoop loop, Term term) => loop with { Terms = loop.Terms.Add(term) };

    private static Address Named(string text) => Address.TryParse(text) ?? throw new FormatException($"'{text}' is not position/characteristic.");
}
