using System.Collections.Frozen;
using System.Collections.Immutable;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>What each gate asks for, by the stage that it leads out of.</summary>
public static class Gates
{
    private static readonly FrozenDictionary<string, ImmutableArray<Requirement>> OutOf = new Dictionary<string, ImmutableArray<Requirement>>
    {
        [UnitStages.Intake] = [IntakeRequirements.Complaint],
        [UnitStages.PreStrip] = [IntakeRequirements.PreStripReadings],
        [UnitStages.Teardown] = [VerdictRequirements.NothingNotAssessed],
        [UnitStages.Decision] = [DecisionRequirements.Decided, DecisionRequirements.Approval],
        [UnitStages.Assembly] =
            [AssemblyRequirements.ChosenFitted, AssemblyRequirements.AsBuiltReadings, VerdictRequirements.NothingNotAssessed, VerdictRequirements.NothingOpen],
        [UnitStages.FinalTest] =
            [SignOffRequirements.Interlock, SignOffRequirements.FunctionTest, SignOffRequirements.SafetySigned, VerdictRequirements.NothingNotAssessed, VerdictRequirements.NothingOpen],
    }.ToFrozenDictionary();

    /// <summary>Every requirement, by id.</summary>
    public static FrozenDictionary<string, Requirement> All { get; } =
        OutOf.Values.SelectMany(r => r).DistinctBy(r => r.Id).ToFrozenDictionary(r => r.Id, StringComparer.Ordinal);

    /// <summary>What the shop's policy may allow exceptions to.</summary>
    public static ImmutableArray<string> Exceptable { get; } =
        [.. All.Values.Where(r => r.Leave == Leave.Exception).Select(r => r.Id).Append(FamilyGates.PolicyWord).Order(StringComparer.Ordinal)];

    /// <summary>The gate out of the stage where a unit is, held against it: what every unit needs, then what its family wants. Empty where no gate leads on.</summary>
    public static ImmutableArray<Held> Hold(GateFacts facts) =>
        [.. OutOf.GetValueOrDefault(facts.File.Unit.Stage, []).Concat(FamilyGates.OutOf(facts.File.Unit.Stage, facts.Judged.Family)).Select(r => Hold(r, facts))];

    private static Held Hold(Requirement requirement, GateFacts facts)
    {
        var unmet = requirement.Find(facts).ToImmutableArray();
        return new(requirement, unmet, MayLeave(requirement, unmet, facts.File.Policy));
    }

    private static bool MayLeave(Requirement requirement, ImmutableArray<Unmet> unmet, PolicyEdition policy) => requirement.Leave switch
    {
        Leave.NotAvailable => true,
        Leave.Exception => (policy.MayExcept ?? []).Contains(requirement.PolicyWord) && !unmet.Any(u => u.IsSafety),
        _ => false,
    };
}
