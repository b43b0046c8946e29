using System.Collections.Immutable;

namespace RebuildApi.Engine.Mechanics;

/// <summary>Which ring of a bearing.</summary>
public enum BearingRing
{
    /// <summary>On the shaft.</summary>
    Inner,

    /// <summary>In the housing.</summary>
    Outer,
}

/// <summary>A class of damage of rolling bearings.</summary>
/// <param name="Id">As findings say it: <c>false-brinelling</c>.</param>
/// <param name="Clause">Group of ISO 15243:2017; the part after the group is from memory.</param>
/// <param name="Points">What it points to, in plain words.</param>
public sealed record BearingDamageClass(string Id, string Clause, string Points);

/// <summary>Damage of rolling bearings: its classes (groups of ISO 15243:2017) and the direction of thrust that it points to.</summary>
public static class BearingDamage
{
    /// <summary>The classes that a gearbox shows.</summary>
    public static ImmutableArray<BearingDamageClass> Classes { get; } =
    [
        new("subsurface-fatigue", "5.1", "overload or a wrong fit"),
        new("surface-fatigue", "5.1", "thin or dirty oil"),
        new("abrasive-wear", "5.2", "dirt: flush and find its source"),
        new("adhesive-wear", "5.2", "skidding or too little oil"),
        new("moisture-corrosion", "5.3", "water, or a unit that stood"),
        new("fretting", "5.3", "a ring that creeps on its seat: check shaft and bore"),
        new("false-brinelling", "5.3", "vibration while standing"),
        new("electrical-erosion", "5.4", "current through the bearing"),
        new("overload-indentation", "5.5", "pressed in through the balls"),
        new("debris-indentation", "5.5", "chips: clean the oil ways"),
        new("fracture", "5.6", "forced or fatigue cracking: look at every gear for debris"),
    ];

    /// <summary>
    /// Direction in which the shaft was thrust: +1 toward the output, −1 toward the input. Thrust pits one side of a race (common practice, no
    /// source): a shaft that is thrust toward the output loads the input side of the inner ring's groove and the output side of the outer's.
    /// </summary>
    /// <param name="ring">The ring that is pitted.</param>
    /// <param name="onOutputSide">Whether the pits are on the side of its groove toward the output.</param>
    public static int ThrustFrom(BearingRing ring, bool onOutputSide) => (ring == BearingRing.Outer) == onOutputSide ? 1 : -1;
}
