using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Which way round a part sits.</summary>
internal static class Facings
{
    /// <summary>The marked face must point to <c>input</c> or <c>output</c>. Not recorded is not known.</summary>
    public static Assessment Judge(PairingCase parts, string role, string wanted)
    {
        var place = parts.Places[role];
        (string, string)[] told = [("position", place.Position), ("wanted", wanted)];
        return (parts.Part(role)?.Placement.Facing ?? Facing.Unspecified, wanted) switch
        {
            (Facing.Unspecified, _) => parts.Unknown(new Address(place.Position, "facing")),
            (Facing.Input, "input") or (Facing.Output, "output") => parts.Holds("facing-right", told),
            _ => parts.Breaks("facing-wrong", told),
        };
    }
}
