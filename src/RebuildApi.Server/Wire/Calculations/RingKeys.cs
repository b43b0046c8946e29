using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>The play of the keys in the slots of ring and hub.</summary>
/// <param name="Teeth">Teeth of the ring.</param>
/// <param name="RingSlot">Width of the ring's slot.</param>
/// <param name="Key">Width of a key.</param>
/// <param name="KeyRadius">Radius at which the keys stand.</param>
/// <param name="HubSlot">Width of the hub's slot; when not said the keys sit tight in it. Slots that are opened up let the ring over-index.</param>
public sealed record RingIndexRequest(
    [Between(1, 1000)] int Teeth,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity RingSlot,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity Key,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity KeyRadius,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity? HubSlot = null)
{
    /// <summary>To the engine.</summary>
    public RingIndexInput ToEngine() => new(Teeth, RingSlot.Si - Key.Si, KeyRadius.Si, HubSlot is { } hub ? hub.Si - Key.Si : 0);
}

/// <summary>How far a ring turns on its keys.</summary>
/// <param name="Angle">Index angle to either side.</param>
/// <param name="ShareOfPitch">The same as a share of the tooth pitch; a quarter is aimed at.</param>
/// <param name="Band"><c>slips-by</c>, <c>watched</c>, <c>right</c> or <c>over-indexed</c> (bands are common practice, no source).</param>
/// <param name="RingSlotMinusKeyWanted">Play in the ring's slot that gives a quarter of a pitch, the keys tight in the hub.</param>
public sealed record RingIndexWire(QuantityWire Angle, double ShareOfPitch, string Band, QuantityWire RingSlotMinusKeyWanted)
{
    /// <summary>From the engine.</summary>
    public static RingIndexWire From(RingIndexResult r, Display show) =>
        new(show.Si(r.Angle, Dimension.Angle), Math.Round(r.ShareOfPitch, 9), Kebab.Of(r.Band), show.Metres(r.SlotMinusKeyWanted));
}

/// <summary>The sprung keys of a synchronizer.</summary>
/// <param name="Count">How many.</param>
/// <param name="SpringForce">Force of the spring on each.</param>
/// <param name="RampAngle">Slope of a key's hump to the shaft axis.</param>
/// <param name="Friction">Friction on it.</param>
/// <param name="Length">Length of a key, with the room that the hub leaves for it.</param>
/// <param name="Room">Room for a key along the hub. The keys of one hub are often longer than those of the other.</param>
public sealed record KeysRequest(
    [Between(1, 12)] int Count,
    [Of(Dimension.Force, Sign = SignRule.Positive)] SentQuantity SpringForce,
    [Of(Dimension.Angle, Sign = SignRule.NotNegative)] SentQuantity RampAngle,
    [Between(0, 2)] decimal Friction = 0.1m,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity? Length = null,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity? Room = null);

/// <summary>What the keys do before the sleeve passes.</summary>
/// <param name="Breakthrough">Force with which they press the ring until the sleeve goes over them; weak keys clash on fast shifts.</param>
/// <param name="ConeTorque">Torque of the cones under that force: what first turns the ring to block.</param>
/// <param name="EndRoom">Room left at the end of a key; negative: it is too long for this hub.</param>
public sealed record KeysWire(QuantityWire Breakthrough, QuantityWire ConeTorque, QuantityWire? EndRoom)
{
    /// <summary>By the engine.</summary>
    public static KeysWire Of(KeysRequest sent, ImmutableArray<ConeRequest> cones, Display show)
    {
        var force = RingIndex.Breakthrough(sent.Count, sent.SpringForce.Si, sent.RampAngle.Si, (double)sent.Friction);
        return new(
            show.Si(force, Dimension.Force),
            show.Si(cones.Sum(c => SynchronizerTorque.ConeTorque(force, c.ToEngine())), Dimension.Torque),
            sent is { Room: { } room, Length: { } length } ? show.Length(room.Length - length.Length) : null);
    }
}
