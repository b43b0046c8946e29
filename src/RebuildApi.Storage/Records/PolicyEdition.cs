using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>One edition of the shop's policy, signed by whoever put it in force.</summary>
/// <param name="Number">1, 2, 3 …; 0 for what holds until a shop says otherwise.</param>
/// <param name="Policy">The policy; its version is the number.</param>
/// <param name="Person">Who signs.</param>
/// <param name="Reason">Why, in the person's own words.</param>
/// <param name="At">From when on, UTC.</param>
public sealed record PolicyEdition(long Number, Policy Policy, string Person, string Reason, DateTimeOffset At)
{
    /// <summary>What holds until a shop says otherwise.</summary>
    public static PolicyEdition First { get; } = new(0, Policy.Default, "", "", DateTimeOffset.UnixEpoch);

    /// <summary>The requirements of gates that a unit may go on without over a signature; none when the shop allows no exception.</summary>
    public ImmutableArray<string>? MayExcept { get; init; }
}
