using RebuildApi.Contracts;

namespace RebuildApi.Engine.Families;

/// <summary>Limits are of the dimension of what they limit, a new part would pass, and every number says where it comes from.</summary>
internal static class LimitCheck
{
    public static void Run(Family family, FamilyReport report)
    {
        foreach (var kind in family.Kinds)
        {
            foreach (var c in kind.Characteristics)
                Both(c, c.New, c.Service, $"kinds[{kind.Id}].characteristics[{c.Id}]", report);
        }

        var names = new FamilyNames(family);
        foreach (var position in family.Positions)
        {
            foreach (var o in position.Overrides)
            {
                var c = names.Find(new Address(position.Id, o.Characteristic))!;
                Both(c, o.New ?? c.New, o.Service ?? c.Service, $"positions[{position.Id}].overrides[{o.Characteristic}]", report);
            }
        }

        foreach (var loop in family.Loops)
            Loop(loop, $"loops[{loop.Id}]", report);
        foreach (var rule in family.Pairings)
            Sourced(rule.Source, $"pairings[{rule.Id}]", report);
    }

    private static void Both(Characteristic c, Limits? @new, Limits? service, string field, FamilyReport report)
    {
        One(c, @new, $"{field}.new", report);
        One(c, service, $"{field}.service", report);
        report.Require(c.MinimumReadings >= 1, $"{field}.minimumReadings", "readings-range", "A measurement has at least one reading.");
        if (@new is not null && service is not null && !Covers(service, @new))
            report.Doubt(field, "new-outside-service", "A part that is new to the drawing would not pass the service limits.");
        if (c.Unmeasured != Distribution.None && @new is not { Low: not null, High: not null })
            report.Error($"{field}.unmeasured", "drawing-open", "A part can't be taken from the drawing without both limits of a new one.");
    }

    private static void One(Characteristic c, Limits? limits, string field, FamilyReport report)
    {
        if (limits is null)
            return;
        var ends = new[] { limits.Low, limits.High, limits.Target }.OfType<Quantity>();
        report.Require(ends.All(e => e.Kind == c.Dimension), field, "limit-dimension", $"'{c.Id}' is one of {c.Dimension}, its limits are not.");
        Sourced(limits.Source, field, report);
    }

    private static void Loop(ClearanceLoop loop, string field, FamilyReport report)
    {
        Lengths(loop.Window, $"{field}.window", report);
        if (loop.Thermal is not { } thermal)
            return;
        var kelvin = double.IsFinite(thermal.Cold) && double.IsFinite(thermal.Hot) && thermal.Cold > 0 && thermal.Cold <= thermal.Hot;
        report.Require(kelvin, $"{field}.thermal", "temperature-range", "Cold and hot are kelvin, cold before hot.");
        foreach (var window in new[] { thermal.ColdWindow, thermal.HotWindow }.OfType<Limits>())
            Lengths(window, $"{field}.thermal", report);
    }

    private static void Lengths(Limits window, string field, FamilyReport report)
    {
        var ends = new[] { window.Low, window.High, window.Target }.OfType<Quantity>();
        report.Require(ends.All(e => e is Exact), field, "limit-dimension", "The window of a clearance is one of lengths.");
        Sourced(window.Source, field, report);
    }

    private static void Sourced(Source source, string field, FamilyReport report) =>
        report.Require(!string.IsNullOrWhiteSpace(source.Citation), field, "source-missing", "A number says where it comes from.");

    private static bool Covers(Limits service, Limits part) =>
        (service.Low is null || part.Low is null || service.Low.InSi <= part.Low.InSi) && (service.High is null || part.High is null || part.High.InSi <= service.High.InSi);
}
