using System.Collections.Immutable;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;

namespace RebuildApi.Server.Composition;

/// <summary>The answers about one unit as they go out.</summary>
public sealed class AnswerSheet(Judged judged, Display show, KindPrices? prices = null)
{
    private readonly DecisionsBeside _decisions = new(judged.File.Decisions, judged.View.InputsSha256);

    /// <summary>The entity tag of all answers: what is known, whose rules, which decisions and prices stand beside, which units are shown.</summary>
    public string Etag => Etags.OfHash(
    [
        judged.View.InputsSha256, judged.Family.DeclarationSha256, judged.Family.Plugin?.Sha256 ?? "",
        judged.File.Unit.Version.ToString(System.Globalization.CultureInfo.InvariantCulture), show.Inches ? "in" : "mm", .. prices is null ? [] : (string[])[prices.Edition],
    ]);

    /// <summary>Whether the answers depend on records and declarations alone: a rule in code may be suspended now and answer later.</summary>
    public bool IsSteady => judged.Family.Family.Hooks.IsEmpty;

    /// <summary>Each part.</summary>
    public ImmutableArray<PartVerdictWire> Parts => [.. judged.Answers.Parts.Select(p => PartVerdictWire.From(p, judged.Family, _decisions, show))];

    /// <summary>Each clearance.</summary>
    public ImmutableArray<ClearanceWire> Clearances => [.. judged.Answers.Clearances.Select(c => ClearanceWire.From(c, judged.Family, _decisions, show))];

    /// <summary>Each pairing.</summary>
    public ImmutableArray<PairingVerdictWire> Pairings => [.. judged.Answers.Pairings.Select(p => PairingVerdictWire.From(p, judged.Family, _decisions, show, prices))];

    /// <summary>Each sleeve with all the gears that it serves.</summary>
    public ImmutableArray<NeighbourhoodWire> Neighbourhoods => [.. judged.Answers.Neighbourhoods.Select(n => NeighbourhoodWire.From(n, judged.Family, show, prices))];

    /// <summary>The verdicts on parts in their envelope.</summary>
    public PartVerdictsWire Verdicts(ImmutableArray<PartVerdictWire> items, string? next, DateTimeOffset asOf) => new(
        items, next, asOf, judged.File.Unit.Id, judged.File.Unit.Version, RuleWire.From(judged.Answers.Rules), judged.View.InputsSha256,
        Count(judged.Answers.Parts.Select(p => Kebab.Of(p.Outcome))), Cautions.Of(judged.Family, show),
        Missing, Blocks, Complaints)
    {
        Policy = judged.View.Snapshot.Policy.Version,
    };

    /// <summary>Other answers in their envelope.</summary>
    public AnswersOf<T> Wrap<T>(ImmutableArray<T> items, string? next, DateTimeOffset asOf, IEnumerable<string> outcomes) => new(
        items, next, asOf, judged.File.Unit.Id, judged.File.Unit.Version, RuleWire.From(judged.Answers.Rules), judged.View.InputsSha256,
        Count(outcomes), Cautions.Of(judged.Family, show))
    {
        Policy = judged.View.Snapshot.Policy.Version,
    };

    /// <summary>The outcome words of the clearances.</summary>
    public IEnumerable<string> ClearanceOutcomes => judged.Answers.Clearances.Select(c => Kebab.Of(c.Verdict.Outcome));

    /// <summary>The outcome words of the pairings.</summary>
    public IEnumerable<string> PairingOutcomes => judged.Answers.Pairings.Select(p => Kebab.Of(p.Outcome));

    /// <summary>The outcome words of the neighbourhoods.</summary>
    public IEnumerable<string> NeighbourhoodOutcomes => judged.Answers.Neighbourhoods.Select(n => Kebab.Of(n.Outcome));

    /// <summary>Everything at once.</summary>
    public WholeJudgementWire Whole => new(
        RuleWire.From(judged.Answers.Rules), judged.View.InputsSha256, Parts, Clearances, Pairings, Missing, Blocks, Complaints, Cautions.Of(judged.Family, show));

    private ImmutableArray<MissingWire> Missing =>
        [.. judged.Answers.Missing.Select(m => new MissingWire(Subjects.Of(m.Position, m.Index), m.What, m.Id, show.Words(m.Name)))];

    private ImmutableArray<BlockWire> Blocks => [.. judged.Answers.Blocks.Select(b => new BlockWire(b.Subject, ReasonWire.From(b.Reason, judged.Family), _decisions.On(b.Subject)))];

    private ImmutableArray<ComplaintWire> Complaints => [.. judged.Answers.Complaint.Select(Complaint)];

    private ComplaintWire Complaint(Engine.Complaints.ComplaintAnswer answer) => new(
        answer.Symptom.Symptom,
        answer.Symptom.Gear,
        [.. answer.Explanations.Select(e => new ExplanationWire(e.Cause.Id, show.Words(e.Cause.Name), e.Signs))],
        [.. answer.Reasons.Select(r => ReasonWire.From(r, judged.Family))]);

    private static SortedDictionary<string, int> Count(IEnumerable<string> outcomes) =>
        new(outcomes.GroupBy(o => o).ToDictionary(g => g.Key, g => g.Count()), StringComparer.Ordinal);
}
