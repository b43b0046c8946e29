using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Composition;

/// <summary>The formulas of the mechanics calculations, with where they come from.</summary>
public static class MechanicsFormulas
{
    /// <summary>Engagement flanks.</summary>
    public static Formula Engagement { get; } = new(
        "engagement flanks under torque", "Fa = Fc·tan θ; pull-out = Fc·tan(θ + ρc) + μs·Fs; draw-in = Fc·tan(θ − ρc) − μs·Fs; ρc = atan μc",
        "derived from equilibrium of a wedge with friction; the condition for drawing in has the shape published in WO 2007/055624",
        "Friction is no safe reserve: torsional vibration, torque reversal and rocking relieve it. Judge holding with 0.02 to 0.05.");

    /// <summary>Synchronizer.</summary>
    public static Formula Synchronizer { get; } = new(
        "cone torque against index torque", "Tc = Σ μ·F·R/sin α; TI = F·RI·tan(90° − h − ρt); blocks when Tc ≥ TI; lets go when tan α > μ",
        "derived here; wedge with friction of any machine-design text; bands are common practice, no source",
        "Friction of a ring depends on its lining and the oil: a wrong oil changes every number here.");

    /// <summary>Helical gear.</summary>
    public static Formula Helical { get; } = new(
        "tooth forces of a helical gear", "Ft = T/r; Fr = Ft·tan αn/cos β; Fx = Ft·tan β; W = Ft/(cos αn·cos β)", "Mechanical Engineering Design (Shigley), helical gear force analysis");

    /// <summary>Bearing life.</summary>
    public static Formula BearingLife { get; } = new(
        "rating life", "L10 = (C/P)^p·10⁶ revolutions, p = 3 balls, 10/3 rollers; Lnm = a1·aISO·L10; P = X·Fr + Y·Fa above e", "ISO 281:2007; a1 from memory of the standard's table; X and Y of deep-groove bearings by f0·Fa/C0, of tapered ones X = 0.4 and Y = 0.6/e; clearance groups ISO 5753-1",
        "A rating life is of a large group of clean, well fitted bearings; a used bearing is judged by its damage, not by this.");

    /// <summary>Gear train.</summary>
    public static Formula GearTrain { get; } = new("ratio from tooth counts", "ratio = Π driven/Π driver, a sign for each mesh", "arithmetic of tooth counts, losses left out");
}
