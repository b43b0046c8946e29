using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

public class GearTrainTests
{
    public static TheoryData<string> Ids => Shipped.Ids;

    /// <summary>
    /// a = a0 cos αt / cos αwt, a0 = mn (z1 + z2) / (2 cos β), inv αwt = inv αt + 2 tan αn (x1 + x2) / (z1 + z2): cylindrical gear geometry as in
    /// DIN 3960 (formula from memory), solved here by bisection.
    /// </summary>
    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_mesh_runs_at_the_centre_distance_of_the_case_within_two_micrometres(string id)
    {
        var family = Shipped.Of(id);
        var index = new FamilyIndex(family);

        var off = family.Meshes
            .Select(m => (m.Id, Off: CentreDistance(Row(index, m.Driver), Row(index, m.Driven)) - Middle(index.NewLimitsAt(m.CentreDistance)!)))
            .Where(m => Math.Abs(m.Off) > 2e-6);

        Assert.Empty(off);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Mates_have_the_same_module_and_angles_and_opposite_hands(string id)
    {
        var index = new FamilyIndex(Shipped.Of(id));

        Assert.All(index.Family.Meshes, m =>
        {
            var (a, b) = (Row(index, m.Driver), Row(index, m.Driven));
            Assert.Equal((a.NormalModule, a.HelixAngle, a.NormalPressureAngle), (b.NormalModule, b.HelixAngle, b.NormalPressureAngle));
            Assert.Equal(a.Hand, b.Hand switch { Hand.Right => Hand.Left, Hand.Left => Hand.Right, _ => Hand.Spur });
        });
    }

    [Theory]
    [InlineData("brackenmere-4", "first", 3.098)]
    [InlineData("brackenmere-4", "second", 2.040)]
    [InlineData("brackenmere-4", "third", 1.407)]
    [InlineData("brackenmere-4", "reverse", 3.173)]
    [InlineData("ostrand-5", "first", 3.308)]
    [InlineData("ostrand-5", "second", 1.850)]
    [InlineData("ostrand-5", "third", 1.240)]
    [InlineData("ostrand-5", "fourth", 0.966)]
    [InlineData("ostrand-5", "fifth", 0.750)]
    [InlineData("ostrand-5", "reverse", 3.154)]
    [InlineData("kestermere-6", "first", 3.291)]
    [InlineData("kestermere-6", "second", 1.931)]
    [InlineData("kestermere-6", "third", 1.276)]
    [InlineData("kestermere-6", "fifth", 0.844)]
    [InlineData("kestermere-6", "sixth", 0.683)]
    public void The_ratio_of_a_gear_follows_from_its_teeth(string id, string gear, double ratio)
    {
        var index = new FamilyIndex(Shipped.Of(id));

        var product = index.Family.Meshes
            .Where(m => m.Gears.Contains(gear))
            .Aggregate(1.0, (r, m) => r * Row(index, m.Driven).Teeth / Row(index, m.Driver).Teeth);

        Assert.Equal(ratio, product, 3);
    }

    private static ToothSet Row(FamilyIndex index, string place)
    {
        var parts = place.Split('/');
        return index.KindAt(parts[0])!.ToothSets.Single(t => t.Id == (parts.Length == 2 ? parts[1] : ""));
    }

    private static double CentreDistance(ToothSet a, ToothSet b)
    {
        var reference = a.NormalModule.InMetres * (a.Teeth + b.Teeth) / (2 * Math.Cos(a.HelixAngle));
        var transverse = Math.Atan(Math.Tan(a.NormalPressureAngle) / Math.Cos(a.HelixAngle));
        var wanted = Involute(transverse) + (2 * Math.Tan(a.NormalPressureAngle) * (a.ProfileShift + b.ProfileShift) / (a.Teeth + b.Teeth));
        var (low, high) = (0.05, 1.0);
        for (var i = 0; i < 80; i++)
            (low, high) = Involute((low + high) / 2) < wanted ? ((low + high) / 2, high) : (low, (low + high) / 2);
        return reference * Math.Cos(transverse) / Math.Cos(low);
    }

    private static double Involute(double angle) => Math.Tan(angle) - angle;

    private static double Middle(Limits limits) => (limits.Low!.InSi + limits.High!.InSi) / 2;
}
