using System.Collections.Immutable;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Server.Wire;

/// <summary>What stands before every answer.</summary>
public static class Cautions
{
    /// <summary>The words that stand beside every answer.</summary>
    public static ImmutableArray<string> Standing { get; } =
    [
        "These answers advise; a person decides and signs.",
        "The maker's data, local codes and licensed practice stand before anything said here.",
    ];

    /// <summary>Those, and the family's own.</summary>
    public static ImmutableArray<string> Of(FamilyIndex family, Display show) => [.. Standing, .. family.Family.Cautions.Select(show.Words)];
}
