using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Damage;

/// <summary>What looking at a part says.</summary>
/// <param name="Outcome">Whether it conforms.</param>
/// <param name="Disposition">What the policy does with it.</param>
/// <param name="Reasons">Why.</param>
/// <param name="Advice">What else to look for.</param>
public sealed record ConditionAnswer(Outcome Outcome, Disposition Disposition, ImmutableArray<Reason> Reasons, ImmutableArray<Text> Advice)
{
    /// <summary>Operations that remove the damage.</summary>
    public ImmutableArray<string> Mends { get; init; } = [];
}
