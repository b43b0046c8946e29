using RebuildApi.Engine.Mechanics;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Endpoints;

/// <summary>Calculations about gears, sleeves, rings and bearings. Nothing is stored.</summary>
public static class CalculationsMechanicsEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapMechanicsCalculations(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("calculations");
        group.WorkOut("/calculations/engagement", Engagement, "calculateEngagement", "Will a sleeve stay in gear?",
                "Forces of straight, back-tapered and leaned-over flanks under drive and coast, fresh and bedded in; stresses of the teeth, load of the fork, rocking from radial play and what the detent holds, where they are asked for.")
            .Fails(Problems.NotComputable)
            .Example("""
                { "torque": { "value": 300, "unit": "N·m" }, "engagementRadius": { "value": 34, "unit": "mm" }, "splineRadius": { "value": 30, "unit": "mm" },
                  "gearDriveAngle": { "value": 0, "unit": "°" }, "sleeveDriveAngle": { "value": 3, "unit": "°" } }
                """);
        group.WorkOut("/calculations/synchronizer", Synchronizer, "calculateSynchronizer", "Does a synchronizer block and let go?",
                "Cone torque against index torque of one to three cones, whether each ring lets go; time and heat of a shift, what wear does to the gap, how far the ring turns on its keys and what the keys press it with, where they are asked for.")
            .Fails(Problems.NotComputable)
            .Example("""
                { "force": { "value": 600, "unit": "N" }, "cones": [{ "friction": 0.1, "radius": { "value": 40, "unit": "mm" }, "halfAngle": { "value": 6.5, "unit": "°" } }],
                  "chamferRadius": { "value": 45, "unit": "mm" }, "chamferAngle": { "value": 52.5, "unit": "°" }, "chamferFriction": 0.09 }
                """);
        group.WorkOut("/calculations/helical-forces", Helical, "calculateHelicalForces", "Tooth forces of a helical gear", "Tangential, radial and axial force, and the couple that tilts the gear.")
            .Fails(Problems.NotComputable)
            .Example("""
                { "torque": { "value": 143.239, "unit": "N·m" }, "pitchRadius": { "value": 35, "unit": "mm" }, "helixAngle": { "value": 0.50, "unit": "rad" },
                  "normalPressureAngle": { "value": 0.35, "unit": "rad" } }
                """);
        group.WorkOut("/calculations/bearing-life", Life, "calculateBearingLife", "Rating life of a bearing", "Equivalent load with the factors of the type, basic and adjusted rating life in revolutions and hours; whether the type takes the thrust; internal clearance as it runs, where they are asked for.")
            .Fails(Problems.NotComputable)
            .Example("""{ "dynamicRating": { "value": 30700, "unit": "N" }, "radial": { "value": 6200, "unit": "N" }, "element": "ball", "revolutionsPerMinute": 1500 }""");
        group.WorkOut("/calculations/gear-train", Train, "calculateGearTrain", "Ratios and the way of the power",
                "The ratio of a chain of meshes, or each gear of a family with its meshes, speeds, torques and the parts under load.")
            .Fails(Problems.NotComputable)
            .Example("""{ "meshes": [{ "driver": 16, "driven": 88 }, { "driver": 16, "driven": 88 }] }""");
    }

    private static Found<CalculationWire<EngagementRequest, EngagementWire>> Engagement(Body<EngagementRequest> body, Asked asked)
    {
        var sent = body.Value.Completed();
        return new(Calculations.Run(
            sent, MechanicsFormulas.Engagement, () => new Worked<EngagementWire>(EngagementWire.From(EngagementAnalysis.Solve(sent.ToEngine()), sent, asked.Show)), "/sleeveDriveAngle"));
    }

    private static Found<CalculationWire<SynchronizerRequest, SynchronizerWire>> Synchronizer(Body<SynchronizerRequest> body, Asked asked) => new(Calculations.Run(
        body.Value, MechanicsFormulas.Synchronizer,
        () => new Worked<SynchronizerWire>(SynchronizerWire.From(SynchronizerAnalysis.Solve(body.Value.ToEngine()), body.Value, asked.Show)),
        "/chamferAngle"));

    private static Found<CalculationWire<HelicalForcesRequest, HelicalForcesWire>> Helical(Body<HelicalForcesRequest> body, Asked asked) => new(Calculations.Run(
        body.Value, MechanicsFormulas.Helical, () => new Worked<HelicalForcesWire>(HelicalForcesWire.From(HelicalForces.Solve(body.Value.ToEngine()), asked.Show)), "/helixAngle"));

    private static Found<CalculationWire<BearingLifeRequest, BearingLifeWire>> Life(Body<BearingLifeRequest> body, Asked asked)
    {
        var sent = body.Value;
        var complaints = new Complaints();
        if (sent.Axial is not null && sent.Factors is null && sent.Type is not ("cylindrical" or "needle"))
            LackingFactors(sent, complaints);
        complaints.ThrowIfAny(Problems.NotComputable);
        return new(Calculations.Run(sent, MechanicsFormulas.BearingLife, () => new Worked<BearingLifeWire>(BearingLifeWire.Of(sent, asked.Show)), "/radial"));
    }

    private static void LackingFactors(BearingLifeRequest sent, Complaints complaints)
    {
        if (sent.Type == "deep-groove" && sent.StaticRating is null)
            complaints.Add("/staticRating", FieldProblems.MissingField, "With an axial load the static rating is needed, or e, x and y of the bearing.");
        foreach (var (name, missing) in new[] { ("e", sent.E is null or 0), ("x", sent.X is null), ("y", sent.Y is null) })
        {
            if (missing && sent.Type != "deep-groove" && (sent.Type != "tapered" || name == "e"))
                complaints.Add("/" + name, FieldProblems.MissingField, $"With an axial load the bearing's {name} is needed.");
        }
    }

    private static Found<CalculationWire<GearTrainRequest, GearTrainWire>> Train(Body<GearTrainRequest> body, FamilyBook families)
    {
        var complaints = new Complaints();
        var trains = new GearTrainIntake(body.Value, families, complaints).Read();
        complaints.ThrowIfAny(Problems.NotComputable);
        return new(Calculations.Run(body.Value, MechanicsFormulas.GearTrain, () => new Worked<GearTrainWire>(trains!), "/meshes"));
    }
}
