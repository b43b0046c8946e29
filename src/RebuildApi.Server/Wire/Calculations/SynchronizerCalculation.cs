using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>A synchronizer pressed by its sleeve.</summary>
/// <param name="Force">Force of the sleeve on the ring.</param>
/// <param name="Cones">One to three cones in series.</param>
/// <param name="ChamferRadius">Pitch radius of the ring's chamfers.</param>
/// <param name="ChamferAngle">Chamfer flank to axis: half the pointing angle.</param>
/// <param name="ChamferFriction">Friction on the chamfers.</param>
/// <param name="Shift">One shift, for its time and heat.</param>
/// <param name="Reserve">The gap between ring and gear, for its life.</param>
/// <param name="Index">The play of the keys, for how far the ring turns on them.</param>
/// <param name="Keys">The sprung keys, for what they press the ring with before the sleeve passes.</param>
public sealed record SynchronizerRequest(
    [Of(Dimension.Force, Sign = SignRule.Positive)] SentQuantity Force,
    [Entries(1, 3)] ImmutableArray<ConeRequest> Cones,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity ChamferRadius,
    [Of(Dimension.Angle, Sign = SignRule.Positive)] SentQuantity ChamferAngle,
    [Between(0, 2)] decimal ChamferFriction,
    ShiftRequest? Shift = null,
    ReserveRequest? Reserve = null,
    RingIndexRequest? Index = null,
    KeysRequest? Keys = null)
{
    /// <summary>To the engine.</summary>
    public SynchronizerInput ToEngine() => new(
        Force.Si, [.. Cones.Select(c => c.ToEngine())], ChamferRadius.Si, ChamferAngle.Si, (double)ChamferFriction);
}

/// <summary>One friction cone.</summary>
/// <param name="Friction">Friction coefficient.</param>
/// <param name="Radius">Mean radius.</param>
/// <param name="HalfAngle">Flank to axis.</param>
/// <param name="Width">Width of the cone's band along the shaft, for its pressure.</param>
public sealed record ConeRequest(
    [Between(0.001, 2)] decimal Friction,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity Radius,
    [Of(Dimension.Angle, Sign = SignRule.Positive)] SentQuantity HalfAngle,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity? Width = null)
{
    /// <summary>To the engine.</summary>
    internal Cone ToEngine() => new((double)Friction, Radius.Si, HalfAngle.Si);
}

/// <summary>How a synchronizer behaves.</summary>
/// <param name="ConeTorque">Torque of the cones.</param>
/// <param name="IndexTorque">Torque with which the sleeve's chamfers turn the ring aside.</param>
/// <param name="BlockingRatio">Cone torque over index torque.</param>
/// <param name="Band"><c>clash</c>, <c>marginal</c>, <c>blocks</c> or <c>hard-shift</c> (bands are common practice, no source).</param>
/// <param name="LeastChamferAngle">Least chamfer angle at which it still blocks.</param>
/// <param name="Cones">Each cone.</param>
/// <param name="Shift">Time and heat of the shift, where one was sent.</param>
/// <param name="Reserve">What wear does to the gap, where one was sent.</param>
/// <param name="Index">How far the ring turns on its keys, where their play was sent.</param>
/// <param name="Keys">What the keys press the ring with, where they were sent.</param>
public sealed record SynchronizerWire(
    QuantityWire ConeTorque,
    QuantityWire IndexTorque,
    double? BlockingRatio,
    string Band,
    QuantityWire LeastChamferAngle,
    ImmutableArray<ConeWire> Cones,
    ShiftWire? Shift,
    ReserveWire? Reserve,
    RingIndexWire? Index,
    KeysWire? Keys)
{
    /// <summary>From the engine.</summary>
    public static SynchronizerWire From(SynchronizerResult r, SynchronizerRequest sent, Display show) => new(
        show.Si(r.Torques.ConeTorque, Dimension.Torque),
        show.Si(r.Torques.IndexTorque, Dimension.Torque),
        Numbers.Finite(r.Torques.BlockingRatio),
        Kebab.Of(r.Torques.Band),
        show.Si(r.LeastChamferAngle, Dimension.Angle),
        [.. r.Cones.Zip(sent.Cones, (c, s) => ConeWire.From(c, s, sent.Force.Si, show))],
        sent.Shift is { } shift ? ShiftWire.From(SynchronizingHeat.Solve(shift.ToEngine(r.Torques.ConeTorque, sent.Cones[0].Radius.Si)), shift.Ring) : null,
        sent.Reserve is { } reserve ? ReserveWire.From(reserve, sent.Cones[0].HalfAngle.Si, show) : null,
        sent.Index is { } index ? RingIndexWire.From(RingIndex.Solve(index.ToEngine()), show) : null,
        sent.Keys is { } keys ? KeysWire.Of(keys, sent.Cones, show) : null);
}

/// <summary>One cone as it comes out.</summary>
/// <param name="Torque">Its torque.</param>
/// <param name="LetsGo">Whether its ring lets go by itself.</param>
/// <param name="StickingAngle">The half-angle at and below which it would stick.</param>
/// <param name="PullOffForce">What it takes to pull the ring off; 0 when it lets go.</param>
/// <param name="AreaSquareMillimetres">Area of its band, where the width was sent.</param>
/// <param name="Pressure">Mean pressure on it, where the width was sent.</param>
public sealed record ConeWire(
    QuantityWire Torque, bool LetsGo, QuantityWire StickingAngle, QuantityWire PullOffForce, double? AreaSquareMillimetres, QuantityWire? Pressure)
{
    /// <summary>From the engine.</summary>
    public static ConeWire From(ConeResult c, ConeRequest sent, double force, Display show) => new(
        show.Si(c.Torque, Dimension.Torque),
        c.LetsGo,
        show.Si(c.StickingAngle, Dimension.Angle),
        show.Si(c.PullOffForce, Dimension.Force),
        sent.Width is { } width ? Numbers.Finite(ConeRelease.Area(sent.ToEngine(), width.Si) * 1e6) : null,
        sent.Width is { } band ? Display.In(ConeRelease.Pressure(force, sent.ToEngine(), band.Si) * 1e-6, "MPa") : null);
}
