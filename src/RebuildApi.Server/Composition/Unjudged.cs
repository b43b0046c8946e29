using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Identity;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>The answers about a unit whose rules are not loaded: what was recorded stays, and nothing counts as good.</summary>
public sealed class Unjudged(UnitFile file, string whyNot, Display show)
{
    private static readonly SortedDictionary<string, int> One = new(StringComparer.Ordinal) { ["not-assessed"] = 1 };

    private readonly string _inputs = Canonical.Sha256(UnitSnapshots.Of(file));

    /// <summary>The verdict that nothing could be judged.</summary>
    public Verdict Verdict => new(
        file.Unit.Id, Outcome.NotAssessed, null, null, null, null, [Reason], [],
        new RuleIdentity(file.Unit.Family, "", null, ContractVersion.Current, EngineVersion.Current, file.Unit.Family.Id), _inputs);

    /// <summary>The verdict as it goes out.</summary>
    public VerdictWire Wire => VerdictWire.From(Verdict, new DecisionsBeside(file.Decisions, _inputs), show);

    /// <summary>One part that is not assessed: the unit itself.</summary>
    public PartVerdictWire Part => new(
        file.Unit.Id, "", file.Unit.Tag, null, null, Outcome.NotAssessed, Disposition.Undecided, Wire.Reasons, Wire, [], [], [], null);

    /// <summary>One clearance that is not assessed: the unit itself.</summary>
    public ClearanceWire Clearance => new(
        file.Unit.Id, file.Unit.Tag, "", Outcome.NotAssessed, Wire, false, null, null, null, null, null, null, null, [], null, null, [], null);

    /// <summary>One pairing that is not assessed: the unit itself.</summary>
    public PairingVerdictWire Pairing => new(
        file.Unit.Id, file.Unit.Tag, [], Compatibility.NotAssessed, Severity.Advisory, null, Wire.Reasons, [], [], null, Wire.Rules, _inputs);

    /// <summary>One neighbourhood that is not assessed: the unit itself.</summary>
    public NeighbourhoodWire Neighbourhood => new(file.Unit.Id, file.Unit.Tag, Compatibility.NotAssessed, [], Wire.Reasons, [], []);

    /// <summary>The part in its envelope.</summary>
    public PartVerdictsWire Verdicts(ImmutableArray<PartVerdictWire> items, string? next, DateTimeOffset asOf) => new(
        items, next, asOf, file.Unit.Id, file.Unit.Version, null, _inputs, One, Cautions.Standing, [], [new BlockWire(file.Unit.Id, Wire.Reasons[0], null)], [])
    {
        Policy = file.Policy.Policy.Version,
    };

    /// <summary>Another answer in its envelope.</summary>
    public AnswersOf<T> Wrap<T>(ImmutableArray<T> items, string? next, DateTimeOffset asOf) =>
        new(items, next, asOf, file.Unit.Id, file.Unit.Version, null, _inputs, One, Cautions.Standing)
        {
            Policy = file.Policy.Policy.Version,
        };

    private Reason Reason => new("family-not-loaded", new Dictionary<string, string> { ["why"] = whyNot }, file.Unit.Family.Id);
}
