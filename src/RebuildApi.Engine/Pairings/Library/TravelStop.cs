using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>What stops a sleeve's travel.</summary>
internal sealed class TravelStop : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "travel-stop",
        "Travel stop",
        """
        Judges whether a sleeve that is drawn in is stopped. A straight sleeve needs no stop. A back-tapered one without a stop over-travels, drags
        the fork, wears one pad and can overheat the assembly. With a travel needed, the sleeve's travel must pass it, and with a travel at which
        it bottoms, stay short of that.
        """,
        [Role("sleeve", "the sliding sleeve"), Role("stop", "the part that carries the stop"), MaybeRole("travel", "the part on which the travel is read: sleeve or rail")],
        [Sees("sleeve", "form", "form of its teeth", [.. EngagementSights.Forms]), Sees("stop", "stop", "the travel stop", [.. EngagementSights.Stops])],
        [Reads("travel", "travel", Dimension.Length, "travel from neutral to the end")],
        [
            Number("needed", Dimension.Length, "travel at which the teeth are in to full depth; the travel is not judged without it"),
            Number("bottoming", Dimension.Length, "travel at which the sleeve runs against gear or ring; no upper end when not given"),
        ],
        []);

    public override Assessment Judge(PairingCase parts)
    {
        var checks = new List<Assessment> { Stopped(parts) };
        if (parts.Has("travel") && (parts.Parameter("needed") ?? parts.Parameter("bottoming")) is not null)
            checks.Add(parts.ReadingWithin("sleeve-travel", "travel", "travel", parts.Parameter("needed"), parts.Parameter("bottoming")));
        return Assessment.Worst(checks);
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts)
    {
        yield return new Exchange("fit-stop", $"Fit at {parts.Called("stop")} a part with a travel stop.", [parts.Fit("stop", "stop", "present")]);
        yield return new Exchange("fit-straight-sleeve", "Fit a straight sleeve.", [parts.Fit("sleeve", "form", "straight")]);
    }

    private static Assessment Stopped(PairingCase parts)
    {
        var (form, stop) = (parts.See("sleeve", "form"), parts.See("stop", "stop"));
        if (form.Value is { } f && !EngagementSights.Forms.Contains(f))
            return parts.Strange(form);
        if (stop.Value is { } s && !EngagementSights.Stops.Contains(s))
            return parts.Strange(stop);
        return (form.Value, stop.Value) switch
        {
            ("straight", _) => parts.Holds("stop-not-needed", ("sleeve", form.At.Position)),
            (_, "present" or "limited") => parts.Holds("stop-there", ("position", stop.At.Position)),
            ("back-tapered", "none") => parts.Breaks("stop-missing", ("sleeve", form.At.Position), ("position", stop.At.Position)),
            (null, "none") => parts.Unknown(form.At),
            (null, _) => Assessment.Worst([parts.Unknown(form.At), parts.Unknown(stop.At)]),
            _ => parts.Unknown(stop.At),
        };
    }
}
