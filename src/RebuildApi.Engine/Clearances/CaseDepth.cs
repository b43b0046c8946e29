using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Clearances;

/// <summary>
/// Depth of a hardened layer from a hardness traverse: where the hardness falls to the limit, between the two points about it
/// (ISO 18203, formerly ISO 2639; interpolation from memory of it): CHD = d₁ + (d₂ − d₁)·(H₁ − H_limit)/(H₁ − H₂).
/// </summary>
/// <param name="Depth">The depth; none when the traverse does not cross the limit.</param>
/// <param name="AtLeast">A depth that is surely reached: the deepest point that is still hard; none when the surface is soft.</param>
/// <param name="Reasons">What is to be known beside it.</param>
public sealed record CaseDepth(Length? Depth, Length? AtLeast, ImmutableArray<Reason> Reasons)
{
    /// <summary>The usual limit, HV.</summary>
    public const double UsualLimit = 550;

    private const double HardestCore = 450;

    /// <summary>Reads a traverse.</summary>
    /// <param name="traverse">Depth below the surface and hardness HV, from the surface inward; at least two points.</param>
    /// <param name="limit">The limit, HV: 550, or more in steps of 25 by agreement.</param>
    /// <exception cref="ArgumentException">Fewer than two points, depths that do not rise, a hardness that is none, or another limit.</exception>
    public static CaseDepth Of(ImmutableArray<HardnessPoint> traverse, double limit = UsualLimit)
    {
        Require(traverse, limit);
        if (traverse[0].Vickers < limit)
            return new CaseDepth(null, null, [Because.Of("case-surface-soft", "case-depth", ("vickers", traverse[0].Vickers), ("limit", limit))]);
        var below = traverse.Select((p, i) => (Point: p, Index: i)).FirstOrDefault(x => x.Point.Vickers < limit);
        if (below.Point is null)
            return new CaseDepth(null, traverse[^1].Depth, [Because.Of("case-deeper-than-traverse", "case-depth", ("depthNm", traverse[^1].Depth))]);
        var hard = traverse[below.Index - 1];
        var depth = hard.Depth + Length.NearestToMetres((below.Point.Depth - hard.Depth).InMetres * (hard.Vickers - limit) / (hard.Vickers - below.Point.Vickers));
        return new CaseDepth(depth, hard.Depth, [.. CoreReasons(traverse, depth)]);
    }

    /// <summary>What is left of a layer after a cut; not below zero.</summary>
    public static Length After(Length depth, Length removed) => removed >= depth ? Length.Zero : depth - removed;

    /// <summary>The method holds for layers over a core softer than 450 HV at three times the depth.</summary>
    private static IEnumerable<Reason> CoreReasons(ImmutableArray<HardnessPoint> traverse, Length depth)
    {
        var core = traverse.FirstOrDefault(p => p.Depth >= 3 * depth);
        if (core is null)
            yield return Because.Of("case-core-not-reached", "case-depth", ("depthNm", 3 * depth));
        else if (core.Vickers >= HardestCore)
            yield return Because.Of("case-core-too-hard", "case-depth", ("vickers", core.Vickers));
    }

    private static void Require(ImmutableArray<HardnessPoint> traverse, double limit)
    {
        if (traverse.IsDefault || traverse.Length < 2)
            throw new ArgumentException("A traverse has two points or more.", nameof(traverse));
        if (traverse.Any(p => !double.IsFinite(p.Vickers) || p.Vickers <= 0))
            throw new ArgumentException("A hardness is a number above zero.", nameof(traverse));
        if (traverse.Zip(traverse.Skip(1)).Any(x => x.First.Depth >= x.Second.Depth) || traverse[0].Depth < Length.Zero)
            throw new ArgumentException("The depths of a traverse rise from the surface inward.", nameof(traverse));
        if (!double.IsFinite(limit) || limit < UsualLimit || limit % 25 != 0)
            throw new ArgumentException("The limit is 550 HV, or more in steps of 25.", nameof(limit));
    }
}

/// <summary>One point of a hardness traverse.</summary>
/// <param name="Depth">Below the surface.</param>
/// <param name="Vickers">Hardness, HV.</param>
public sealed record HardnessPoint(Length Depth, double Vickers);
