using System.Globalization;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Families;

/// <summary>What is tightened and filled in stands in places that are there, with limits that can be meant; what a gate wants done can be done, and done by then.</summary>
internal static class BuildCheck
{
    private const double MostTorque = 5000;
    private const double MostVolume = 0.1;

    public static void Run(Family family, FamilyReport report)
    {
        var names = new FamilyNames(family);
        foreach (var fastener in family.Fasteners ?? [])
            Fastener(fastener, names, report);
        foreach (var lubricant in family.Lubricants ?? [])
            Lubricant(lubricant, names, report);
        foreach (var gate in family.Gates ?? [])
            Gate(gate, family, report);
    }

    private static void Fastener(Fastener fastener, FamilyNames names, FamilyReport report)
    {
        var field = $"fasteners[{fastener.Id}]";
        Places(fastener.Positions, field, names, report);
        report.Require(fastener.Quantity is >= 1 and <= 1000, $"{field}.quantity", "quantity-range", $"'{fastener.Quantity}' fasteners can't be tightened.");
        Limits(fastener.Torque, $"{field}.torque", Dimension.Torque, MostTorque, "N·m", report);
        if (fastener.Angle is { } angle)
            Limits(angle, $"{field}.angle", Dimension.Angle, 2 * Math.PI, "rad", report);
    }

    private static void Lubricant(Lubricant lubricant, FamilyNames names, FamilyReport report)
    {
        var field = $"lubricants[{lubricant.Id}]";
        Places(lubricant.Positions, field, names, report);
        Limits(lubricant.Quantity, $"{field}.quantity", Dimension.Volume, MostVolume, "m³", report);
        if (lubricant.Temperature is { } temperature)
            Limits(temperature, $"{field}.temperature", Dimension.Temperature, 500, "K", report);
    }

    private static void Gate(FamilyGate gate, Family family, FamilyReport report)
    {
        var field = $"gates[{gate.Id}]";
        report.Require(!gate.MayExcept || gate.Criticality != Criticality.SafetyCritical, $"{field}.mayExcept", "exception-never", "What can hurt a person is never left out.");
        report.Require(gate.Id.Length <= 57, $"{field}.id", "id-form", "The id of a gate is at most 57 long.");
        switch (gate.Demand)
        {
            case LoopRead read:
                var loop = family.Loops.FirstOrDefault(l => l.Id == read.Loop);
                report.Require(loop is not null, $"{field}.demand", "loop-unknown", $"There is no clearance '{read.Loop}'.");
                report.Require(loop is not { Trial: TrialMethod.None }, $"{field}.demand", "loop-not-read", $"'{read.Loop}' can't be read on the assembly: give it a trial, or ask for something else.");
                break;
            case TestTried tried:
                var test = (family.Tests ?? []).FirstOrDefault(t => t.Id == tried.Test);
                report.Require(test is not null, $"{field}.demand", "test-unknown", $"There is no test '{tried.Test}'.");
                report.Require(test is not { Stage: TestStage.BeforeStripDown } || gate.Stage == GateStage.PreStrip, $"{field}.stage", "test-too-late", $"'{tried.Test}' can be tried only while it is whole: ask for it before it is stripped.");
                report.Require(test is not { Stage: TestStage.Teardown } || gate.Stage != GateStage.PreStrip, $"{field}.stage", "test-too-early", $"'{tried.Test}' can be tried only while it is apart: ask for it later.");
                break;
            default:
                break;
        }
    }

    private static void Places(IReadOnlyCollection<string> positions, string field, FamilyNames names, FamilyReport report)
    {
        report.Require(positions.Count > 0, $"{field}.positions", "positions-missing", "It is somewhere: name at least one place.");
        foreach (var position in positions.Where(p => !names.HasPosition(p)))
            report.Error($"{field}.positions", "position-unknown", $"There is no position '{position}'.");
    }

    private static void Limits(Limits limits, string field, Dimension dimension, double most, string unit, FamilyReport report)
    {
        var ends = new[] { limits.Low, limits.High, limits.Target }.OfType<Quantity>().ToArray();
        report.Require(ends.All(e => e.Kind == dimension), field, "limit-dimension", $"These are limits of {dimension}, the ends are not.");
        report.Require(ends.All(e => e.Kind != dimension || (e.InSi > 0 && e.InSi <= most)), field, "limit-range", $"More than nothing, and at most {most.ToString("0.##", CultureInfo.InvariantCulture)} {unit}.");
        report.Require(!string.IsNullOrWhiteSpace(limits.Source.Citation), field, "source-missing", "A number says where it comes from.");
    }
}
