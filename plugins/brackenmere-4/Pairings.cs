namespace Brackenmere4;

/// <summary>Which parts may run together. All are common practice of the trade, no source; limits among them are invented.</summary>
internal static class Pairings
{
    public static ImmutableArray<PairingRule> All => [.. EngagementPairings.All, .. SynchronizerPairings.All, .. GearPairings.All, .. BearingPairings.All, .. SmallPartPairings.All];

    public static ImmutableArray<MatchedSet> Sets =>
    [
        new("hub-and-sleeve-3-4", ["hub-3-4", "sleeve-3-4"], SetBond.SameIndividualsAndIndex),
        new("hub-and-sleeve-1-2", ["hub-1-2", "sleeve-1-2"], SetBond.SameIndividualsAndIndex),
        new("keys-3-4", ["keys-3-4", "key-springs-3-4"], SetBond.ReplaceTogether),
        new("keys-1-2", ["keys-1-2", "key-springs-1-2"], SetBond.ReplaceTogether),
    ];
}
