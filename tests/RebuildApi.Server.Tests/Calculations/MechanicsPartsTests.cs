using RebuildApi.Server.Tests.Kit;
using static RebuildApi.Server.Tests.Calculations.Asking;

namespace RebuildApi.Server.Tests.Calculations;

/// <summary>The parts of a mechanics calculation that are worked out where they are asked for. Figures computed here, no source, unless said.</summary>
public sealed class MechanicsPartsTests(ShopServer server) : IClassFixture<ShopServer>
{
    private static readonly string[] s_flankParts = ["stress", "fork", "walkOut", "detent"];
    private static readonly string[] s_ringParts = ["shift", "reserve", "index", "keys"];

    private static readonly string s_flanks = $$"""
        "torque": {{Q(400, "N·m")}}, "engagementRadius": {{Q(41, "mm")}}, "splineRadius": {{Q(41, "mm")}}, "engagementFriction": 0, "splineFriction": 0
        """;

    private static readonly string s_ring = $$"""
        "force": {{Q(800, "N")}}, "cones": [{ "friction": 0.1, "radius": {{Q(32, "mm")}}, "halfAngle": {{Q(7, "°")}}, "width": {{Q(8, "mm")}} }],
        "chamferRadius": {{Q(37, "mm")}}, "chamferAngle": {{Q(52.5, "°")}}, "chamferFriction": 0.09
        """;

    [Theory]
    [InlineData(1, 4.5, 37.6, 23.2)]
    [InlineData(0.5, 4.5, 75, 46)]
    [InlineData(0.3333, 4.5, 113, 69.5)]
    [InlineData(0.5, 3.0, 113, 69.5)]
    [InlineData(0.5, 2.0, 169, 104)]
    public async Task Fewer_or_shorter_teeth_carry_the_whole_torque_at_a_higher_stress(double share, double engaged, double contact, double shear)
    {
        using var http = server.CreateClient();
        var answer = await http.Calculate("engagement", $$"""
            { {{s_flanks}}, "gearDriveAngle": {{Q(3.5, "°")}}, "sleeveDriveAngle": {{Q(3.5, "°")}},
              "teeth": { "count": 36, "contactHeight": {{Q(1.6, "mm")}}, "engagedLength": {{Q(engaged, "mm")}}, "rootThickness": {{Q(2.6, "mm")}}, "share": {{Number(share)}} } }
            """);
        Assert.Equal(contact, answer.At("result.stress.contact.value"), 0.5);
        Assert.Equal(shear, answer.At("result.stress.shear.value"), 0.5);
    }

    [Theory]
    [InlineData(false, 597, 3.1, 44)]
    [InlineData(true, 0, 0, 0)]
    public async Task Without_a_stop_the_fork_carries_what_draws_the_sleeve_in(bool stopped, double load, double pressure, double pressureVelocity)
    {
        using var http = server.CreateClient();
        var answer = await http.Calculate("engagement", $$"""
            { {{s_flanks}}, "gearDriveAngle": {{Q(3.5, "°")}}, "sleeveDriveAngle": {{Q(3.5, "°")}},
              "travel": { "travel": {{Q(9.8, "mm")}}, "needed": {{Q(9, "mm")}}, "toBottom": {{Q(10.5, "mm")}}, "stopped": {{(stopped ? "true" : "false")}},
                "padAreaSquareMillimetres": 192, "padRadius": {{Q(45, "mm")}}, "revolutionsPerMinute": 3000 } }
            """);
        Assert.Equal(load, answer.At("result.fork.forkLoad.value"), 0.5);
        Assert.Equal(pressure, answer.At("result.fork.padPressure.value"), 0.05);
        Assert.Equal(pressureVelocity, answer.At("result.fork.pressureVelocity.value"), 0.5);
        Assert.Equal(0.8, answer.At("result.fork.overTravel.value"), 1e-9);
        Assert.Equal(0.7, answer.At("result.fork.leftToBottom.value"), 1e-9);
    }

    [Fact]
    public async Task Worn_needles_and_a_loose_hub_rock_the_teeth_out_turn_by_turn()
    {
        using var http = server.CreateClient();
        var answer = await http.Calculate("engagement", $$"""
            { {{s_flanks}}, "gearDriveAngle": {{Q(0, "°")}}, "sleeveDriveAngle": {{Q(0, "°")}},
              "gearPlay": { "play": {{Q(0.06, "mm")}}, "length": {{Q(25, "mm")}} }, "sleevePlay": { "play": {{Q(0.15, "mm")}}, "length": {{Q(22, "mm")}} } }
            """);
        Assert.Equal(0.0024 * 180 / Math.PI, answer.At("result.walkOut.gear.tilt.value"), 1e-6);
        Assert.Equal(0.20, answer.At("result.walkOut.gear.swing.value"), 0.005);
        Assert.Equal(0.56, answer.At("result.walkOut.sleeve.swing.value"), 0.005);
    }

    [Theory]
    [InlineData(-3, 121, false)]
    [InlineData(-2, 0, true)]
    public async Task A_detent_alone_does_not_hold_three_degrees_of_forward_taper(double degrees, double expulsion, bool holds)
    {
        using var http = server.CreateClient();
        var answer = await http.Calculate("engagement", $$"""
            { "torque": {{Q(400, "N·m")}}, "engagementRadius": {{Q(41, "mm")}}, "splineRadius": {{Q(41, "mm")}}, "engagementFriction": 0.02, "splineFriction": 0.02,
              "gearDriveAngle": {{Q(degrees, "°")}}, "sleeveDriveAngle": {{Q(0, "°")}}, "detent": { "springForce": {{Q(60, "N")}}, "notchAngle": {{Q(45, "°")}}, "friction": 0.10 } }
            """);
        Assert.Equal(73, answer.At("result.detent.force.value"), 0.5);
        Assert.Equal(expulsion, answer.At("result.detent.expulsion.value"), 0.5);
        Assert.Equal(holds, (bool)answer["result"]!["detent"]!["holds"]!);
    }

    [Fact]
    public async Task What_is_not_asked_for_is_not_answered()
    {
        using var http = server.CreateClient();
        var flanks = await http.Calculate("engagement", $$"""{ {{s_flanks}}, "gearDriveAngle": {{Q(0, "°")}}, "sleeveDriveAngle": {{Q(0, "°")}} }""");
        var ring = await http.Calculate("synchronizer", $$"""{ {{s_ring}} }""");
        Assert.All(s_flankParts, part => Assert.Null(flanks["result"]![part]));
        Assert.All(s_ringParts, part => Assert.Null(ring["result"]![part]));
    }

    [Fact]
    public async Task One_shift_takes_its_time_warms_its_ring_and_presses_its_cone()
    {
        using var http = server.CreateClient();
        var answer = await http.Calculate("synchronizer", $$"""
            { {{s_ring}}, "shift": { "inertia": 0.012, "revolutionsPerMinute": 1400, "coneAreaSquareMillimetres": 1620, "ring": { "mass": {{Q(60, "g")}} } } }
            """);
        Assert.Equal(129, answer.At("result.shift.energy.value"), 0.5);
        Assert.Equal(0.084, answer.At("result.shift.time.value"), 0.0005);
        Assert.Equal(1540, answer.At("result.shift.meanPower.value"), 5.0);
        Assert.Equal(0.080, answer.At("result.shift.energyPerArea.value"), 0.0005);
        Assert.Equal(0.95, answer.At("result.shift.meanPowerPerArea.value"), 0.005);
        Assert.Equal(1.9, answer.At("result.shift.peakPowerPerArea.value"), 0.05);
        Assert.Equal(4.7, answer.At("result.shift.slidingSpeed.value"), 0.05);
        Assert.Equal(2.8, answer.At("result.shift.ringWarmsBy.value"), 0.05);
        Assert.Equal(1620, answer.At("result.cones.0.areaSquareMillimetres"), 5.0);
        Assert.Equal(4.05, answer.At("result.cones.0.pressure.value"), 0.005);
    }

    [Fact]
    public async Task A_downshift_against_more_drag_than_the_cones_have_never_ends()
    {
        using var http = server.CreateClient();
        var answer = await http.Calculate("synchronizer", $$"""
            { {{s_ring}}, "shift": { "inertia": 0.012, "revolutionsPerMinute": 1400, "coneAreaSquareMillimetres": 1620, "upshift": false, "drag": {{Q(30, "N·m")}} } }
            """);
        Assert.Null(answer["result"]!["shift"]!["time"]);
        Assert.Equal(0, answer.At("result.shift.meanPower.value"));
    }

    [Fact]
    public async Task Little_wear_of_the_cone_eats_much_of_the_gap()
    {
        using var http = server.CreateClient();
        var answer = await http.Calculate("synchronizer", $$"""
            { {{s_ring}}, "reserve": { "now": {{Q(1.0, "mm")}}, "limit": {{Q(0.4, "mm")}}, "new": {{Q(1.2, "mm")}}, "lifeSoFar": 1000 } }
            """);
        Assert.Equal(0.6, answer.At("result.reserve.left.value"), 1e-9);
        Assert.Equal(0.074, answer.At("result.reserve.radialBudget.value"), 0.0005);
        Assert.Equal(3000, answer.At("result.reserve.remainingLife"), 1e-6);
    }

    // Bands common practice, no source.
    [Theory]
    [InlineData(12.88, 10, 0.25, "right")]
    [InlineData(12.88, 10.5, 0.293, "right")]
    [InlineData(13.38, 10.5, 0.337, "watched")]
    [InlineData(13.88, 11, 0.424, "over-indexed")]
    [InlineData(11.50, 10, 0.130, "slips-by")]
    public async Task Opened_slots_of_ring_and_hub_let_the_ring_over_index(double ringSlot, double hubSlot, double share, string band)
    {
        using var http = server.CreateClient();
        var answer = await http.Calculate("synchronizer", $$"""
            { {{s_ring}}, "index": { "teeth": 36, "ringSlot": {{Q(ringSlot, "mm")}}, "key": {{Q(10, "mm")}}, "hubSlot": {{Q(hubSlot, "mm")}}, "keyRadius": {{Q(33, "mm")}} } }
            """);
        Assert.Equal(share, answer.At("result.index.shareOfPitch"), 0.0006);
        Assert.Equal(band, answer.Text("result.index.band"));
        Assert.Equal(2.88, answer.At("result.index.ringSlotMinusKeyWanted.value"), 0.005);
    }

    // The keys of one hub are longer than those of the other (common practice, no source).
    [Fact]
    public async Task Keys_press_the_ring_before_the_sleeve_passes_and_the_long_ones_do_not_go_into_the_short_hub()
    {
        using var http = server.CreateClient();
        var answer = await http.Calculate("synchronizer", $$"""
            { {{s_ring}}, "keys": { "count": 3, "springForce": {{Q(20, "N")}}, "rampAngle": {{Q(45, "°")}}, "length": {{Q(23.1, "mm")}}, "room": {{Q(19.4, "mm")}} } }
            """);
        var force = 60 * Math.Tan((Math.PI / 4) + Math.Atan(0.1));
        Assert.Equal(force, answer.At("result.keys.breakthrough.value"), 1e-6);
        Assert.Equal(0.1 * force * 0.032 / Math.Sin(7 * Math.PI / 180), answer.At("result.keys.coneTorque.value"), 1e-6);
        Assert.Equal(-3.7, answer.At("result.keys.endRoom.value"), 1e-9);
    }

    [Fact]
    public async Task A_key_wider_than_its_slot_and_a_ramp_too_steep_are_refused()
    {
        using var http = server.CreateClient();
        await http.Refuse("synchronizer", $$"""{ {{s_ring}}, "index": { "teeth": 36, "ringSlot": {{Q(9, "mm")}}, "key": {{Q(10, "mm")}}, "keyRadius": {{Q(33, "mm")}} } }""");
        await http.Refuse("synchronizer", $$"""{ {{s_ring}}, "keys": { "count": 3, "springForce": {{Q(20, "N")}}, "rampAngle": {{Q(89, "°")}} } }""");
        await http.Refuse("engagement", $$"""{ {{s_flanks}}, "gearDriveAngle": {{Q(0, "°")}}, "sleeveDriveAngle": {{Q(0, "°")}}, "detent": { "springForce": {{Q(60, "N")}}, "notchAngle": {{Q(89, "°")}} } }""");
    }

    // Mechanical Engineering Design (Shigley), ball bearing with combined load: prints 890.8 lbf and 16 150 h (from memory of the book; its table is
    // that of ISO 281 at f0 = 12.3, rounded).
    [Fact]
    public async Task Thrust_counts_by_the_tables_of_the_type()
    {
        using var http = server.CreateClient();
        var answer = await http.Calculate("bearing-life", $$"""
            { "dynamicRating": {{Q(7900, "lbf")}}, "radial": {{Q(500, "lbf")}}, "axial": {{Q(400, "lbf")}}, "staticRating": {{Q(4450, "lbf")}}, "type": "deep-groove", "element": "ball",
              "revolutionsPerMinute": 720 }
            """);
        Assert.Equal(890.8, answer.At("result.equivalentLoad.value") / 4.4482216152605, 1.0);
        Assert.Equal(16150, answer.At("result.hours"), 50.0);
        Assert.Equal(0.56, answer.At("result.factors.x"));
        Assert.True((bool)answer["result"]!["thrust"]!["enough"]!);
    }

    // Filling-slot bearings take about one third of the thrust (engineering magazine's reference article); half the static rating is from memory.
    [Theory]
    [InlineData("deep-groove", true)]
    [InlineData("filling-slot", false)]
    [InlineData("cylindrical", false)]
    public async Task A_helical_shaft_wants_the_ordinary_deep_groove_type(string type, bool enough)
    {
        using var http = server.CreateClient();
        var answer = await http.Calculate("bearing-life", $$"""
            { "dynamicRating": {{Q(30000, "N")}}, "radial": {{Q(5000, "N")}}, "axial": {{Q(4663, "N")}}, "staticRating": {{Q(18000, "N")}}, "e": 0.3, "x": 0.56, "y": 1.45, "type": "{{type}}", "element": "ball" }
            """);
        Assert.Equal(enough, (bool)answer["result"]!["thrust"]!["enough"]!);
    }

    [Theory]
    [InlineData("deep-groove", new[] { "/staticRating" })]
    [InlineData("tapered", new[] { "/e" })]
    [InlineData("angular-contact", new[] { "/e", "/x", "/y" })]
    public async Task Thrust_without_what_its_factors_follow_from_is_refused_by_field(string type, string[] fields)
    {
        using var http = server.CreateClient();
        Assert.Equal(fields, await http.Refuse("bearing-life", $$"""
            { "dynamicRating": {{Q(30000, "N")}}, "radial": {{Q(5000, "N")}}, "axial": {{Q(4000, "N")}}, "type": "{{type}}", "element": "ball" }
            """));
    }

    // ISO 5753-1 CN at 35 mm, 6 to 20 µm (public copies); the share of the interference is a rule of thumb (from memory).
    [Fact]
    public async Task Fit_and_warmth_take_the_clearance_of_a_bearing()
    {
        using var http = server.CreateClient();
        var answer = await http.Calculate("bearing-life", $$"""
            { "dynamicRating": {{Q(30000, "N")}}, "radial": {{Q(5000, "N")}}, "element": "ball",
              "clearance": { "bore": {{Q(35, "mm")}}, "group": "cn", "interference": {{Q(0.010, "mm")}}, "innerWarmerBy": 5, "racewayDiameter": {{Q(53.5, "mm")}} } }
            """);
        Assert.Equal((0.006, 0.020), (answer.At("result.clearance.madeLow.value"), answer.At("result.clearance.madeHigh.value")));
        Assert.Equal(0.008, answer.At("result.clearance.lostToFit.value"), 1e-9);
        Assert.Equal(11.5e-6 * 5 * 53.5, answer.At("result.clearance.lostToWarmth.value"), 1e-9);
        Assert.Equal(0.006 - 0.008 - (11.5e-6 * 5 * 53.5), answer.At("result.clearance.runsLow.value"), 1e-9);
    }

    [Fact]
    public async Task A_bore_outside_the_table_is_refused()
    {
        using var http = server.CreateClient();
        Assert.Equal(["/clearance"], await http.Refuse("bearing-life", $$"""
            { "dynamicRating": {{Q(30000, "N")}}, "radial": {{Q(5000, "N")}}, "element": "ball", "clearance": { "bore": {{Q(500, "mm")}}, "group": "c3" } }
            """));
    }

    private static string Number(double value) => value.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
