namespace FamilyWords;

/// <summary>Words for a place in the build. Stripping order is the order in which the places are listed.</summary>
internal static class PositionWords
{
    /// <summary>A place filled by one part of the kind of the same name.</summary>
    public static Position Place(string id, string name) => new(id, Text.English($"position.{id}", name), id, "", 1, 0, []);

    public static Position Holds(this Position position, string kind, int quantity = 1) => position with { Kind = kind, Quantity = quantity };

    /// <summary>A pack: from one piece up to so many.</summary>
    public static Position Pack(this Position position, string kind, int upTo) => position with { Kind = kind, Quantity = upTo, Fewest = 1 };

    public static Position Limit(this Position position, string characteristic, Limits? @new = null, Limits? service = null) => position with
    {
        Overrides = position.Overrides.Add(new LimitOverride(characteristic, @new, service)),
    };

    /// <summary>The places of one assembly.</summary>
    public static ImmutableArray<Position> Assembly(string group, params Position[] positions) => [.. positions.Select(p => p with { Group = group })];

    /// <summary>All places, numbered as they come apart.</summary>
    public static ImmutableArray<Position> Stripped(params ImmutableArray<Position>[] assemblies) =>
        [.. assemblies.SelectMany(a => a).Select((p, i) => p with { StripOrder = i + 1 })];
}
