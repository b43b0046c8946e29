using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;

namespace RebuildApi.Engine.Families;

/// <summary>Mates have the same module and angles and opposite hands, and run at the centre distance that the case is drawn with.</summary>
internal static class MeshCheck
{
    /// <summary>Checks a family whose references resolve.</summary>
    public static void Run(Family family, FamilyReport report)
    {
        var names = new FamilyNames(family);
        foreach (var mesh in family.Meshes)
            Mesh(names.Teeth(mesh.Driver)!, names.Teeth(mesh.Driven)!, names.NewAt(mesh.CentreDistance), $"meshes[{mesh.Id}]", report);
    }

    private static void Mesh(ToothSet a, ToothSet b, Limits? drawing, string field, FamilyReport report)
    {
        var alike = a.NormalModule == b.NormalModule && a.HelixAngle.Equals(b.HelixAngle) && a.NormalPressureAngle.Equals(b.NormalPressureAngle);
        report.Require(alike, field, "mesh-geometry-differs", "Mates have the same module, helix angle and pressure angle.");
        var opposite = (a.Hand, b.Hand) is (Hand.Left, Hand.Right) or (Hand.Right, Hand.Left) or (Hand.Spur, Hand.Spur);
        report.Require(opposite, field, "mesh-hands-alike", "Mates on parallel shafts have opposite hands.");
        var distance = MeshGeometry.WorkingCentreDistance(
            a.NormalModule.InMetres, a.Teeth + b.Teeth, a.HelixAngle, a.NormalPressureAngle, a.ProfileShift + b.ProfileShift);
        if (drawing is null)
            report.Doubt(field, "mesh-not-drawn", "The case has no drawing limits for this centre distance.");
        else if (distance is not { } d || (drawing.Low?.InSi ?? d) > d || (drawing.High?.InSi ?? d) < d)
            report.Error(field, "mesh-off-centre", $"These teeth run without backlash at {Millimetres(distance)} mm, outside the drawing of the case.");
    }

    private static string Millimetres(double? metres) => metres is { } m ? (m * 1000).ToString("F4", CultureInfo.InvariantCulture) : "no";
}
