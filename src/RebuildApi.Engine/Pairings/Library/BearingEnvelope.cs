using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Size, groove, shield and clearance class of a bearing.</summary>
internal sealed class BearingEnvelope : Template
{
    private static readonly string[] s_names = ["envelope", "clearance-group", "ring-groove", "shield"];

    public override TemplateDefinition Definition { get; } = new(
        "bearing-envelope",
        "Bearing envelope and clearance group",
        """
        Judges whether a bearing is of the size and make-up that its seat asks for. Each option lists the values allowed of the attribute of the
        same name; what no option names is not looked at. With a role seat, the attribute envelope must be that of the seat.
        """,
        [Role("bearing", "the bearing"), MaybeRole("seat", "the case or shaft that it sits in; of the same vintage or not")],
        [
            MaySee("bearing", "envelope", "bore, outside diameter and width as one designation"),
            MaySee("bearing", "clearance-group", "radial internal clearance group of ISO 5753-1: c2, cn, c3, c4, c5"),
            MaySee("bearing", "ring-groove", "groove for a snap ring in the outer ring"),
            MaySee("bearing", "shield", "open, or shielded on which side"),
            MaySee("seat", "envelope", "the envelope that it takes; needed when the role is filled"),
        ],
        [],
        [],
        [.. s_names.Select(n => Word(n, $"the values of {n} allowed; not looked at when not given"))]);

    public override Assessment Judge(PairingCase parts)
    {
        var checks = s_names
            .Select(n => (Name: n, Allowed: parts.List(n)))
            .Where(x => !x.Allowed.IsEmpty)
            .Select(x => parts.OneOf("bearing", x.Name, x.Allowed))
            .ToList();
        if (parts.Has("seat"))
            checks.Add(parts.Alike("envelope", ["bearing", "seat"]));
        return Assessment.Worst(checks);
    }

    public override IEnumerable<Exchange> Exchanges(PairingCase parts)
    {
        var wanted = s_names.Select(n => (Name: n, Value: parts.List(n).FirstOrDefault())).Where(w => w.Value is not null).ToList();
        if (parts.Has("seat") && parts.See("seat", "envelope").Value is { } envelope)
            wanted = [.. wanted.Where(w => w.Name != "envelope"), ("envelope", envelope)];
        yield return new Exchange(
            "fit-right-bearing", $"Fit a bearing that is {string.Join(", ", wanted.Select(w => w.Value))}.", [.. wanted.Select(w => parts.Fit("bearing", w.Name, w.Value!))]);
    }
}
