using System.Net;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Calculations;

public sealed class MechanicsCalculationTests
{
    // Mechanical Engineering Design (Shigley), square-threaded power screw, from memory and recomputed: lead angle 4.851787°, friction 0.08, 6.4 kN
    // at a mean radius of 15 mm: the thread alone is not self-locking, −0.46557 N·m. The flank of a tooth leaned over by that angle is the same wedge.
    [Fact]
    public async Task A_leaned_flank_lets_go_where_the_published_screw_does()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var answer = await http.Calculate("engagement", """
            { "torque": { "value": 96, "unit": "N·m" }, "engagementRadius": { "value": 15, "unit": "mm" }, "splineRadius": { "value": 15, "unit": "mm" },
              "gearDriveAngle": { "value": -4.851787, "unit": "°" }, "sleeveDriveAngle": { "value": -4.851787, "unit": "°" }, "engagementFriction": 0.08, "splineFriction": 0 }
            """);
        Assert.Equal(-0.46557 / 0.015, answer.At("result.drive.fresh.pullOut.value"), 0.001);
        Assert.False((bool)answer["result"]!["drive"]!["fresh"]!["holds"]!);
        Assert.Equal(4.573921, answer.At("result.holdingLimit.value"), 1e-6);
    }

    // A rigid back-tapered sleeve on straight teeth draws nothing in when fresh (common practice, no source).
    [Fact]
    public async Task A_back_tapered_sleeve_on_straight_teeth_draws_nothing_in_when_fresh()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var answer = await http.Calculate("engagement", """
            { "torque": { "value": 300, "unit": "N·m" }, "engagementRadius": { "value": 34, "unit": "mm" }, "splineRadius": { "value": 30, "unit": "mm" },
              "gearDriveAngle": { "value": 0, "unit": "°" }, "sleeveDriveAngle": { "value": 3, "unit": "°" } }
            """);
        Assert.Equal(0, answer.At("result.drive.fresh.flankForce.value"));
        Assert.True(answer.At("result.drive.bedded.flankForce.value") > 0);
        Assert.Equal(3, answer.At("understood.sleeveCoastAngle.value"));
    }

    [Fact]
    public async Task A_flank_too_steep_for_friction_and_a_radius_of_nothing_are_refused_by_name()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        const string Rest = """ "torque": { "value": 300, "unit": "N·m" }, "splineRadius": { "value": 30, "unit": "mm" }, "gearDriveAngle": { "value": 89, "unit": "°" }, "sleeveDriveAngle": { "value": 89, "unit": "°" } """;
        Assert.Equal(["/sleeveDriveAngle"], await http.Refuse("engagement", $$"""{ {{Rest}}, "engagementRadius": { "value": 34, "unit": "mm" } }"""));
        Assert.Equal(["/engagementRadius/value"], await http.Refuse("engagement", $$"""{ {{Rest}}, "engagementRadius": { "value": 0, "unit": "mm" } }""", HttpStatusCode.BadRequest));
    }

    // Cone of 80 mm, 6.5°, friction 0.1, 600 N: 21.200812 N·m and sticking at 5.710593°; computed here, no source.
    [Fact]
    public async Task A_cone_gives_its_torque_and_lets_go()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var answer = await http.Calculate("synchronizer", """
            { "force": { "value": 600, "unit": "N" }, "cones": [{ "friction": 0.1, "radius": { "value": 40, "unit": "mm" }, "halfAngle": { "value": 6.5, "unit": "°" } }],
              "chamferRadius": { "value": 45, "unit": "mm" }, "chamferAngle": { "value": 52.5, "unit": "°" }, "chamferFriction": 0.09 }
            """);
        Assert.Equal(21.200812, answer.At("result.coneTorque.value"), 1e-6);
        Assert.Equal(5.710593, answer.At("result.cones.0.stickingAngle.value"), 1e-6);
        Assert.True((bool)answer["result"]!["cones"]![0]!["letsGo"]!);
    }

    [Fact]
    public async Task A_synchronizer_without_a_cone_is_refused_by_name()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        Assert.Equal(["/cones"], await http.Refuse("synchronizer", """
            { "force": { "value": 600, "unit": "N" }, "cones": [], "chamferRadius": { "value": 45, "unit": "mm" }, "chamferAngle": { "value": 52.5, "unit": "°" }, "chamferFriction": 0.09 }
            """, HttpStatusCode.BadRequest));
    }

    // Textbook problem: 15 kW at 1000 rev/min, helix 0.50 rad, normal pressure angle 0.35 rad, pitch diameter 70 mm; answers computed here.
    [Fact]
    public async Task Forces_of_a_helical_gear_are_those_of_the_textbook_problem()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var answer = await http.Calculate("helical-forces", """
            { "torque": { "value": 143.239449, "unit": "N·m" }, "pitchRadius": { "value": 35, "unit": "mm" }, "helixAngle": { "value": 0.50, "unit": "rad" },
              "normalPressureAngle": { "value": 0.35, "unit": "rad" } }
            """);
        Assert.Equal(4092.5557, answer.At("result.tangential.value"), 0.0001);
        Assert.Equal(2235.7734, answer.At("result.axial.value"), 0.0001);
        Assert.Equal(1702.2893, answer.At("result.radial.value"), 0.0001);
    }

    [Fact]
    public async Task A_helix_of_a_right_angle_is_refused_by_name()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        Assert.Equal(["/helixAngle"], await http.Refuse("helical-forces", """
            { "torque": { "value": 100, "unit": "N·m" }, "pitchRadius": { "value": 35, "unit": "mm" }, "helixAngle": { "value": 90, "unit": "°" }, "normalPressureAngle": { "value": 20, "unit": "°" } }
            """));
    }

    // Mechanical Engineering Design (Shigley), catalogue rating, from memory and recomputed: 400 lbf, 5000 h at 1725 rev/min need 3211 lbf.
    [Fact]
    public async Task The_catalogue_rating_of_the_published_example_lasts_its_hours()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var answer = await http.Calculate("bearing-life", """
            { "dynamicRating": { "value": 3211.4175, "unit": "lbf" }, "radial": { "value": 400, "unit": "lbf" }, "element": "ball", "revolutionsPerMinute": 1725 }
            """);
        Assert.Equal(5000, answer.At("result.hours"), 0.01);
    }

    [Fact]
    public async Task An_axial_load_without_its_factors_and_a_reliability_not_listed_are_refused_by_name()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        const string Rest = """ "dynamicRating": { "value": 3000, "unit": "N" }, "radial": { "value": 400, "unit": "N" }, "element": "ball" """;
        Assert.Equal(["/e", "/x", "/y"], await http.Refuse("bearing-life", $$"""{ {{Rest}}, "axial": { "value": 100, "unit": "N" } }"""));
        Assert.Equal(["/reliability"], await http.Refuse("bearing-life", $$"""{ {{Rest}}, "reliability": 0.91 }"""));
    }

    // Mechanical Engineering Design (Shigley), two equal stages of 88 over 16 teeth, from memory and recomputed: 30.25.
    [Fact]
    public async Task Two_stages_multiply_and_a_family_tells_each_of_its_gears()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        Assert.Equal(30.25, (await http.Calculate("gear-train", """{ "meshes": [{ "driver": 16, "driven": 88 }, { "driver": 16, "driven": 88 }] }""")).At("result.ratio"));
        var family = await http.Calculate("gear-train", $$"""{ "family": "{{ShopServer.Family}}", "gear": "third" }""");
        Assert.Equal("third", family.Text("result.gears.0.gear"));
    }

    [Fact]
    public async Task A_family_that_is_not_there_is_refused_by_name()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        Assert.Equal(["/family"], await http.Refuse("gear-train", """{ "family": "nowhere-4" }"""));
        Assert.Equal([""], await http.Refuse("gear-train", "{ }"));
    }
}
