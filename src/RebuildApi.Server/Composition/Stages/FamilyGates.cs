using System.Collections.Frozen;
using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>What a family itself wants done before a unit goes on, besides what every unit needs. It only ever adds.</summary>
public static class FamilyGates
{
    /// <summary>The word by which the shop's policy allows exceptions to what families want, where the family allows them too.</summary>
    public const string PolicyWord = "family-gates";

    private static readonly FrozenDictionary<string, GateStage> s_stages = new Dictionary<string, GateStage>(StringComparer.Ordinal)
    {
        [UnitStages.PreStrip] = GateStage.PreStrip,
        [UnitStages.Teardown] = GateStage.Teardown,
        [UnitStages.Assembly] = GateStage.Assembly,
        [UnitStages.FinalTest] = GateStage.FinalTest,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The gate that a requirement comes from; null when it is not one of the family's.</summary>
    public static FamilyGate? Of(string requirement, FamilyIndex family) => (family.Family.Gates ?? []).FirstOrDefault(g => FamilyGateWire.RequirementOf(g) == requirement);

    /// <summary>What may be signed for at a unit of the family.</summary>
    public static ImmutableArray<string> Checks(FamilyIndex family) =>
        [.. SignedChecks.All, .. (family.Family.Gates ?? []).Where(g => g.Demand is CheckSigned).Select(FamilyGateWire.RequirementOf)];

    /// <summary>What the family wants before a unit leaves the stage where it is.</summary>
    public static IEnumerable<Requirement> OutOf(string stage, FamilyIndex family) => s_stages.TryGetValue(stage, out var here)
        ? (family.Family.Gates ?? []).Where(g => g.Stage == here).Select(AsRequirement)
        : [];

    private static Requirement AsRequirement(FamilyGate gate) =>
        new(FamilyGateWire.RequirementOf(gate), gate.Name.In("en"), LeaveOf(gate), facts => Missing(gate, facts)) { PolicyWord = PolicyWord, Reason = gate.Reason.In("en") };

    /// <summary>What was not done while the gearbox was whole can't be done any more: then the reason is kept, as for every reading before it is stripped.</summary>
    private static Leave LeaveOf(FamilyGate gate) =>
        !gate.MayExcept ? Leave.Never : gate.Stage == GateStage.PreStrip ? Leave.NotAvailable : Leave.Exception;

    private static IEnumerable<Unmet> Missing(FamilyGate gate, GateFacts facts)
    {
        var isSafety = gate.Criticality == Criticality.SafetyCritical;
        return gate.Demand switch
        {
            LoopRead read => IsRead(read.Loop, gate.Stage, facts)
                ? []
                : [new(read.Loop, $"{facts.Judged.Family.Loops[read.Loop].Name.In("en")} was not read{(IsBuilt(gate.Stage) ? " since it went together" : "")}.",
                    "POST to /trials of the unit what was read with the pieces that are fitted.", isSafety)],
            TestTried tried => facts.Tests.Any(t => t.Seen.Test == tried.Test)
                ? []
                : [new(tried.Test, $"Nobody has tried whether: {TestName(tried.Test, facts)}.", "POST to /tests of the unit what it showed.", isSafety)],
            CheckSigned signed => SignOffRequirements.Signed(facts, FamilyGateWire.RequirementOf(gate), signed.How.In("en"), isSafety),
            _ => throw new InvalidOperationException("A gate wants a clearance read, a test tried or a check signed for."),
        };
    }

    private static bool IsBuilt(GateStage stage) => stage is GateStage.Assembly or GateStage.FinalTest;

    private static bool IsRead(string loop, GateStage stage, GateFacts facts)
    {
        var since = IsBuilt(stage) ? facts.Since(UnitStages.Assembly) : null;
        return facts.File.Trials.Any(t => t.Loop == loop && (since is null || t.Taken.At >= since));
    }

    private static string TestName(string test, GateFacts facts) => facts.Judged.Family.Family.Tests!.First(t => t.Id == test).Name.In("en");
}
