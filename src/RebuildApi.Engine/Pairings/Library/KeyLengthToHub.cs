using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Keys against the hub they belong to.</summary>
internal sealed class KeyLengthToHub : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "key-length-to-hub",
        "Key length to hub",
        """
        Judges whether the keys are those of their hub: the keys of one hub are longer than those of the other, and mixing them gives shifting
        trouble. By length within a window, by an identifying mark such as a notch, or both, as the rule asks. The worst key of the set decides.
        """,
        [Role("key", "the keys"), Role("hub", "their hub")],
        [MaySee("key", "notch", "identifying mark; seen with the option notch")],
        [MayRead("key", "length", Dimension.Length, "length of a key; needed with a length window")],
        [Number("length-low", Dimension.Length, "least length for this hub"), Number("length-high", Dimension.Length, "most length for this hub")],
        [Word("notch", "the values of notch allowed; not seen when not given")]);

    public override Assessment Judge(PairingCase parts)
    {
        var checks = new List<Assessment>();
        var (low, high) = (parts.Parameter("length-low"), parts.Parameter("length-high"));
        if ((low ?? high) is not null)
            checks.Add(parts.ReadingWithin("key-length", "key", "length", low, high));
        if (parts.List("notch") is { IsEmpty: false } allowed)
            checks.Add(parts.OneOf("key", "notch", allowed));
        return Assessment.Worst(checks);
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts)
    {
        var notch = parts.List("notch") is { IsEmpty: false } allowed ? new[] { parts.Fit("key", "notch", allowed[0]) } : [];
        yield return new Exchange("fit-keys-of-this-hub", "Fit the keys that belong to this hub.",
            [.. notch, .. parts.FitWithin("key", "length", parts.Parameter("length-low"), parts.Parameter("length-high"))]);
    }
}
