using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Hands of helices, and so the direction of thrust.</summary>
internal sealed class ThrustDirection : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "thrust-direction",
        "Helix hand and thrust direction",
        """
        Judges the hands of two helical rows. Mates on parallel shafts have opposite hands. Two rows of one cluster, of which one is driven and the
        other drives, have the same hand, so that their thrusts oppose; a cluster of swapped hand adds them, burns its washer and grows its end
        play. The hand is seen on the part as an attribute, or is that of the family's tooth set when the kind declares no such attribute.
        """,
        [Role("first", "one row, as position/tooth-set"), Role("second", "the other row")],
        [MaySee("*", "hand", "hand of the helix; seen when the kind declares it", "right", "left", "spur")],
        [],
        [],
        [Word("relation", "mates: opposite hands; same-cluster: same hand; mates when not given", "mates", "same-cluster")]);

    public override Assessment Judge(PairingCase parts)
    {
        var (first, second) = (HandOf(parts, "first"), HandOf(parts, "second"));
        var doubts = new[] { first, second }.Where(h => h.Hand is null).Select(h => Doubt(parts, h.Sight)).ToArray();
        if (doubts.Length > 0)
            return Assessment.Worst(doubts);
        var cluster = parts.Option("relation") == "same-cluster";
        (string, string)[] told =
        [
            ("first", parts.Rule.Roles["first"]), ("firstHand", HandWords.Of(first.Hand!.Value)),
            ("second", parts.Rule.Roles["second"]), ("secondHand", HandWords.Of(second.Hand!.Value)),
        ];
        return (cluster ? AreAlike(first.Hand.Value, second.Hand.Value) : AreOpposite(first.Hand.Value, second.Hand.Value))
            ? parts.Holds(cluster ? "thrusts-oppose" : "hands-opposite", told)
            : parts.Breaks(cluster ? "thrusts-add" : "hands-alike", told);
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts)
    {
        if (HandOf(parts, "first").Hand is not { } hand)
            yield break;
        var wanted = HandWords.Of(parts.Option("relation") == "same-cluster" ? hand : Mechanics.Thrust.Mirrored(hand));
        yield return new Exchange($"fit-{wanted}-hand", $"Fit at {parts.Called("second")} one of {wanted} hand.", [parts.Fit("second", "hand", wanted)]);
    }

    private static (Hand? Hand, Sight Sight) HandOf(PairingCase parts, string role)
    {
        var at = parts.AddressOf(role, "hand");
        var isSeen = parts.Family.KindAt(at.Position)!.Attributes.Any(a => a.Id == at.Characteristic);
        var sight = parts.See(role, "hand");
        return (isSeen ? HandWords.Parse(sight.Value) : parts.TeethOf(role)?.Hand, sight);
    }

    private static Assessment Doubt(PairingCase parts, Sight sight) => sight.Value is null ? parts.Unknown(sight.At) : parts.Strange(sight);

    private static bool AreAlike(Hand a, Hand b) => a == b;

    private static bool AreOpposite(Hand a, Hand b) => (a, b) is (Hand.Right, Hand.Left) or (Hand.Left, Hand.Right) or (Hand.Spur, Hand.Spur);
}
