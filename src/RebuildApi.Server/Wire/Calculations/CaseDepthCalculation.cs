using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>A hardness traverse, from the surface inward.</summary>
/// <param name="Traverse">Its points.</param>
/// <param name="Limit">The limit hardness in HV: 550, or more in steps of 25 by agreement.</param>
/// <param name="Removed">Metal that a cut would take off.</param>
public sealed record CaseDepthRequest(
    [Entries(2, 100)] ImmutableArray<HardnessPointRequest> Traverse,
    [Between(550, 1200)] int Limit = 550,
    [Of(Dimension.Length, Sign = SignRule.NotNegative)] SentQuantity? Removed = null);

/// <summary>One point. Exactly one of vickers and rockwellC.</summary>
/// <param name="Depth">Depth below the surface.</param>
/// <param name="Vickers">Hardness HV.</param>
/// <param name="RockwellC">Hardness HRC, turned to HV by the table of ASTM A370 and E140; approximate.</param>
public sealed record HardnessPointRequest(
    [Of(Dimension.Length, Sign = SignRule.NotNegative)] SentQuantity Depth, [Between(50, 2000)] decimal? Vickers = null, [Between(40, 68)] decimal? RockwellC = null);

/// <summary>Depth of a hardened layer.</summary>
/// <param name="Depth">The depth; absent when the traverse does not cross the limit.</param>
/// <param name="AtLeast">A depth that is surely reached; absent when the surface is soft.</param>
/// <param name="Left">What is left of the layer after the cut.</param>
public sealed record CaseDepthWire(QuantityWire? Depth, QuantityWire? AtLeast, QuantityWire? Left)
{
    /// <summary>From the engine.</summary>
    public static CaseDepthWire From(CaseDepth layer, Length? removed, Display show) => new(
        show.LengthMaybe(layer.Depth),
        show.LengthMaybe(layer.AtLeast),
        layer.Depth is { } depth && removed is { } off ? show.Length(CaseDepth.After(depth, off)) : null);
}
