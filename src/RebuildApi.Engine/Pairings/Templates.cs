using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings.Library;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Pairings;

/// <summary>All pairing templates, a closed list: a family fills their roles, it does not add to them.</summary>
public static class Templates
{
    private static readonly ImmutableSortedDictionary<string, Template> s_byId = new Template[]
    {
        new EngagementForm(), new SplineMatch(), new TravelStop(), new MatchedSetTogether(), new MeshPair(), new RatioSet(), new CentreDistance(),
        new ThrustDirection(), new BearingThrust(), new BearingEnvelope(), new RingToCone(), new RingSlotToKey(), new KeyLengthToHub(),
        new LiningAgainstOil(), new WasherMaterialFacing(), new SnapRingToGroove(), new ForkToGroove(), new VintageMatch(), new AttributesEqual(),
        new AttributesAllowed(), new CharacteristicsDifference(), new Expression(),
    }.ToImmutableSortedDictionary(t => t.Definition.Id, t => t, StringComparer.Ordinal);

    /// <summary>Their definitions, by id.</summary>
    public static ImmutableArray<TemplateDefinition> All { get; } = [.. s_byId.Values.Select(t => t.Definition)];

    /// <summary>A definition, or null when there is no such template.</summary>
    public static TemplateDefinition? Find(string id) => Of(id)?.Definition;

    /// <summary>What is wrong with how a rule uses its template; empty when nothing is.</summary>
    public static ImmutableArray<TemplateProblem> Check(PairingRule rule, FamilyIndex family) => TemplateCheck.Check(rule, family);

    internal static Template? Of(string id) => s_byId.GetValueOrDefault(id);
}
