using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;

namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Two gears at the case's centre distance.</summary>
internal sealed class CentreDistance : Template
{
    public override TemplateDefinition Definition { get; } = new(
        "centre-distance",
        "Centre distance",
        """
        Judges whether a mesh runs at the centre distance of the case. From module, teeth, helix and profile shift follows the distance at which the
        pair has no backlash; the case's distance less that one must lie between play-low and play-high. Teeth that are counted on the parts (option
        see = teeth) stand before the family's: a mixed pair comes out at another distance. When the case is not read, its drawing counts if the
        family lets it.
        """,
        [Role("driver", "the driving row, as position/tooth-set"), Role("driven", "the driven row"), Role("case", "the case that holds the shafts")],
        [MaySee("driver", "teeth", "number of teeth counted; seen with the option see"), MaySee("driven", "teeth", "the same of the driven row")],
        [Reads("case", "centre-distance", Dimension.Length, "distance of the two axes")],
        [
            new ParameterDefinition("play-low", Dimension.Length, "least that the case may exceed the distance without backlash", Required: true),
            new ParameterDefinition("play-high", Dimension.Length, "most", Required: true),
        ],
        [Word("see", "teeth: the counted teeth stand before the family's", "teeth")]);

    public override Assessment Judge(PairingCase parts)
    {
        if (parts.TeethOf("driver") is not { } a || parts.TeethOf("driven") is not { } b)
            return new Assessment(Compatibility.NotAssessed, [parts.Because("mesh-teeth-undeclared")], []);
        var counts = new[] { Count(parts, "driver", a), Count(parts, "driven", b) };
        var unknown = counts.Where(c => c.Teeth is null).Select(c => parts.Unknown(c.At)).ToArray();
        if (unknown.Length > 0)
            return Assessment.Worst(unknown);
        var at = parts.AddressOf("case", "centre-distance");
        if (parts.Read("case", "centre-distance") is not { } read)
            return parts.Unread(at);
        var working = MeshGeometry.WorkingCentreDistance(
            a.NormalModule.InMetres, counts.Sum(c => c.Teeth!.Value), a.HelixAngle, a.NormalPressureAngle, a.ProfileShift + b.ProfileShift);
        if (working is not { } distance)
            return new Assessment(Compatibility.NotAssessed, [parts.Because("mesh-teeth-undeclared")], []);
        var play = read - Known.Exactly(new Exact(Length.NearestToMetres(distance)));
        return parts.Within("centre-play", play, parts.Parameter("play-low"), parts.Parameter("play-high"), at);
    }

    private static (int? Teeth, Address At) Count(PairingCase parts, string role, ToothSet declared)
    {
        var sight = parts.See(role, "teeth");
        if (parts.Option("see") != "teeth")
            return (declared.Teeth, sight.At);
        return (int.TryParse(sight.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var counted) ? counted : null, sight.At);
    }
}
