namespace FamilyWords;

/// <summary>Words for a piece of rework or assembly.</summary>
internal static class OperationWords
{
    public static Operation Work(string id, string name, string kind, decimal minutes) =>
        new(id, Text.English($"operation.{id}", name), kind, [], [], minutes, [], []);

    /// <summary>Takes metal off: the characteristic loses up to so much, and so much must remain.</summary>
    public static Operation Cuts(this Operation work, string characteristic, Length upTo, Length step, string datum, Limits? remaining = null, double? shareOfCaseDepth = null) =>
        work with { Effects = work.Effects.Add(new Effect(new Address("", characteristic), -upTo, Length.Zero, step, datum, remaining, shareOfCaseDepth)) };

    /// <summary>Opens a bore or adds metal: the characteristic gains up to so much.</summary>
    public static Operation Adds(this Operation work, string characteristic, Length upTo, Length step, string datum, Limits? remaining = null) =>
        work with { Effects = work.Effects.Add(new Effect(new Address("", characteristic), Length.Zero, upTo, step, datum, remaining, null)) };

    public static Operation Mends(this Operation work, params string[] damage) => work with { Mends = [.. damage] };

    public static Operation Careful(this Operation work, params string[] cautions) => work with
    {
        Cautions = [.. work.Cautions, .. cautions.Select((c, i) => Text.English($"operation.{work.Id}.caution-{work.Cautions.Length + i + 1}", c))],
    };

    public static Operation ThenMeasure(this Operation work, params string[] characteristics) => work with { RemeasureGate = [.. characteristics] };
}
