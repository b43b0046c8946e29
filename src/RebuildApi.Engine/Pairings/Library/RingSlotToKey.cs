using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>How far a blocker ring can turn on its keys.</summary>
internal sealed class RingSlotToKey : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "ring-slot-to-key",
        "Ring slot to key",
        """
        Judges how far a blocker ring indexes: half the play of the key in the ring's slot, and in the hub's slot too when the role hub is filled,
        as an arc at the key radius and as a share of the tooth pitch. A quarter of a pitch is aimed at; too little and the sleeve slips by, too
        much and it meets tooth tip on tooth tip: block-out. Hub slots opened up at their edges let the ring over-index whatever is read.
        """,
        [Role("ring", "the blocker ring"), Role("key", "the keys"), MaybeRole("hub", "the hub whose slots carry the keys")],
        [Sees("hub", "key-slot", "edges of the key slots", "sharp", "opened")],
        [
            MayRead("ring", "slot-width", Dimension.Length, "width of the ring's slot; needed with teeth"),
            MayRead("key", "width", Dimension.Length, "width of a key; needed with teeth"),
            MayRead("hub", "slot-width", Dimension.Length, "width of the hub's slot; needed with hub-play counted"),
        ],
        [
            Number("teeth", Dimension.Count, "teeth of the ring; the angle is not judged without it"),
            Number("key-radius", Dimension.Length, "radius at which the keys stand; needed with teeth"),
            Number("share-low", Dimension.Ratio, "least share of a pitch; 0.20 when not given (common practice, no source)"),
            Number("share-high", Dimension.Ratio, "most share of a pitch; 0.33 when not given (common practice, no source)"),
            Number("share-watch", Dimension.Ratio, "above share-high up to this it may run and is watched; 0.40 when not given (common practice, no source)"),
        ],
        [Word("hub-play", "counted: the play of the keys in the hub's slots is added; not when not given", "counted")]);

    public override Assessment Judge(PairingCase parts)
    {
        var checks = new List<Assessment>();
        if (parts.Has("hub"))
            checks.Add(Slots(parts));
        if (parts.Number("teeth") is > 0 && parts.Number("key-radius") is > 0)
            checks.Add(Angle(parts));
        return Assessment.Worst(checks);
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts)
    {
        if (!parts.Has("hub"))
            yield break;
        var slot = parts.Read("key", "width")?.Point is { } key && parts.Option("hub-play") == "counted"
            ? parts.FitWithin("hub", "slot-width", Nanometres(key), Nanometres(key + SmallestSlotPlay))
            : [];
        yield return new Exchange("fit-sharp-hub", "Fit a hub with sharp key slots.", [parts.Fit("hub", "key-slot", "sharp"), .. slot]);
    }

    private static Exact Nanometres(double value) => new(new Length((long)Math.Round(value)));

    // Keys slide in their hub with next to no play (common practice, no source).
    private const double SmallestSlotPlay = 20_000;

    private static Assessment Slots(PairingCase parts)
    {
        var sight = parts.See("hub", "key-slot");
        return sight.Value switch
        {
            null => parts.Unknown(sight.At),
            "sharp" => parts.Holds("key-slots-sharp", ("position", sight.At.Position)),
            "opened" => parts.Breaks("key-slots-opened", ("position", sight.At.Position)),
            _ => parts.Strange(sight),
        };
    }

    private static Assessment Angle(PairingCase parts)
    {
        var counted = parts.Has("hub") && parts.Option("hub-play") == "counted";
        (string Role, string Name)[] reads = counted
            ? [("ring", "slot-width"), ("key", "width"), ("hub", "slot-width")]
            : [("ring", "slot-width"), ("key", "width")];
        var unread = reads.Where(r => parts.Read(r.Role, r.Name) is null).Select(r => parts.Unread(parts.AddressOf(r.Role, r.Name))).ToArray();
        if (unread.Length > 0)
            return Assessment.Worst(unread);
        var key = parts.Read("key", "width")!.Value;
        var play = parts.Read("ring", "slot-width")!.Value - key;
        if (counted)
            play += parts.Read("hub", "slot-width")!.Value - key;
        return Judged(parts, play.AsRatio(ShareOfPitch(parts)), [.. reads.Select(r => parts.AddressOf(r.Role, r.Name))]);
    }

    /// <summary>Share of a pitch for each metre of play: ψ = (play/2)/rk, pitch = 2π/z, share = ψ·z/2π.</summary>
    private static double ShareOfPitch(PairingCase parts) =>
        parts.Number("teeth")!.Value / (4 * Math.PI * parts.Number("key-radius")!.Value);

    private static Assessment Judged(PairingCase parts, Known share, Address[] settles)
    {
        var low = parts.Parameter("share-low") ?? new Real(0.20, Dimension.Ratio);
        var high = parts.Parameter("share-high") ?? new Real(0.33, Dimension.Ratio);
        var watch = parts.Parameter("share-watch") ?? new Real(0.40, Dimension.Ratio);
        var policy = parts.View.Snapshot.Policy;
        var watched = WindowTest.Judge(share, low, high, policy) == Lies.Above && WindowTest.Judge(share, null, watch, policy) == Lies.Inside;
        return watched
            ? parts.OnCondition("index-share-watch", ("value", Checks.Say(Math.Round(share.Point ?? 0, 3))), ("limit", Checks.Say(high.InSi)))
            : parts.Within("index-share", share, low, high, settles);
    }
}
