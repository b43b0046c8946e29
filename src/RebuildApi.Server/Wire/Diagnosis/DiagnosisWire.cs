using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Diagnosis;

namespace RebuildApi.Server.Wire.Diagnosis;

/// <summary>What may lie behind a complaint, and what to look at next.</summary>
/// <param name="Unit">The unit, if it is one of the shop's.</param>
/// <param name="UnitVersion">Its version.</param>
/// <param name="Causes">Every cause of the family: those that bring something that is there before the others, the likeliest first.</param>
/// <param name="Evidence">The clues that it rests on, with what was judged about them.</param>
/// <param name="Unexplained">For each complaint how likely none of the family's causes is behind it.</param>
/// <param name="Checks">What to look at next, the most telling for its minutes first.</param>
/// <param name="Priors">Number of the accepted update that stands in the priors; 0 when they stand as declared.</param>
/// <param name="Reasons">The same in short.</param>
/// <param name="Rules">Whose rules.</param>
/// <param name="InputsSha256">Hash of what it was made from.</param>
/// <param name="Cautions">What can hurt a person or the gearbox, and what stands before this answer.</param>
public sealed record DiagnosisWire(
    string? Unit,
    long? UnitVersion,
    ImmutableArray<CauseWire> Causes,
    ImmutableArray<EvidenceWire> Evidence,
    ImmutableArray<UnexplainedWire> Unexplained,
    ImmutableArray<CheckWire> Checks,
    int Priors,
    ImmutableArray<ReasonWire> Reasons,
    RuleWire Rules,
    string InputsSha256,
    ImmutableArray<string> Cautions);

/// <summary>How likely one cause is there, and why.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Outside">Whether it lies outside the gearbox: ruled out before the gearbox comes out.</param>
/// <param name="Probability">How likely it is there. Several causes may be there at once.</param>
/// <param name="Low">The least that it becomes when any one judged number goes to an end of its range.</param>
/// <param name="High">The most.</param>
/// <param name="HangsOn">The judged number that moves it most.</param>
/// <param name="Prior">How common it is, with its range.</param>
/// <param name="PriorStrength">How many units the prior is worth.</param>
/// <param name="Units">How many closed units were counted into the prior.</param>
/// <param name="Confirmed">In how many of them the cause was confirmed.</param>
/// <param name="Weights">What each clue adds or takes, the heaviest first.</param>
/// <param name="Reasons">The same in words.</param>
/// <param name="Source">Where the prior and the likelihoods come from.</param>
public sealed record CauseWire(
    string Cause,
    string Name,
    bool Outside,
    double Probability,
    double Low,
    double High,
    HangsOnWire? HangsOn,
    LikelihoodWire Prior,
    double PriorStrength,
    int Units,
    int Confirmed,
    ImmutableArray<WeightWire> Weights,
    ImmutableArray<ReasonWire> Reasons,
    string Source)
{
    /// <summary>From the engine.</summary>
    public static CauseWire From(RankedCause ranked, Display show) => new(
        ranked.Cause.Id,
        show.Words(ranked.Cause.Name),
        ranked.Cause.Outside,
        LikelihoodWire.Round(ranked.Probability),
        LikelihoodWire.Round(ranked.Low),
        LikelihoodWire.Round(ranked.High),
        ranked.HangsOn is { } h ? new HangsOnWire(h.Clue?.Id, h.Cause, LikelihoodWire.From(h.Range)) : null,
        LikelihoodWire.From(ranked.PriorRange),
        ranked.Prior.Strength,
        ranked.Prior.Units,
        ranked.Prior.Confirmed,
        [.. ranked.Weights.Select(w => new WeightWire(w.Clue.Id, w.Present, Math.Round(w.LogOdds, 4), Math.Round(w.OddsFactor, 4)))],
        [.. ranked.Reasons.Select(ReasonWire.From)],
        ranked.Cause.Source.Citation);
}

/// <summary>A judged number that a probability hangs on.</summary>
/// <param name="Clue">The clue it belongs to; absent for a prior.</param>
/// <param name="Cause">The cause it belongs to; absent for a clue without any of its causes.</param>
/// <param name="Range">The number with its range.</param>
public sealed record HangsOnWire(string? Clue, string? Cause, LikelihoodWire Range);

/// <summary>A judged probability with its range.</summary>
/// <param name="Low">Lowest defensible probability.</param>
/// <param name="Best">Best judgement.</param>
/// <param name="High">Highest defensible probability.</param>
public sealed record LikelihoodWire(double Low, double Best, double High)
{
    /// <summary>From the contract.</summary>
    public static LikelihoodWire From(Likelihood judged) => new(Round(judged.Low), Round(judged.Best), Round(judged.High));

    /// <summary>A probability without the noise of binary arithmetic.</summary>
    public static double Round(double probability) => Math.Round(probability, 9);
}

/// <summary>What one clue says of one cause.</summary>
/// <param name="Clue">The clue.</param>
/// <param name="Present">Whether it is there.</param>
/// <param name="LogOdds">Natural logarithm of the odds with everything known, less the same without this clue: positive speaks for the cause.</param>
/// <param name="OddsFactor">By how much the clue multiplies the odds.</param>
public sealed record WeightWire(string Clue, bool Present, double LogOdds, double OddsFactor);

/// <summary>A clue that is known.</summary>
/// <param name="Clue">Its id.</param>
/// <param name="Kind">What sort of clue.</param>
/// <param name="Name">In words.</param>
/// <param name="Present">Whether it is there; known not to be there is evidence too.</param>
/// <param name="Otherwise">How likely it is there with none of its causes there.</param>
/// <param name="Causes">How likely each of its causes brings it.</param>
public sealed record EvidenceWire(string Clue, string Kind, string Name, bool Present, LikelihoodWire Otherwise, ImmutableArray<ClueLinkWire> Causes)
{
    /// <summary>From the engine.</summary>
    public static EvidenceWire From(ClueSeen seen, CauseNetwork network) => new(
        seen.Clue.Id, Kebab.Of(seen.Clue.Kind), seen.Clue.Name, seen.Present, LikelihoodWire.From(seen.Clue.Otherwise), ClueLinkWire.Of(seen.Clue, network));
}

/// <summary>How likely a cause that is there brings a clue.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Shown">How likely.</param>
public sealed record ClueLinkWire(string Cause, LikelihoodWire Shown)
{
    /// <summary>From the engine.</summary>
    public static ImmutableArray<ClueLinkWire> Of(Clue clue, CauseNetwork network) =>
        [.. clue.Links.Select(l => new ClueLinkWire(network.Causes[l.Cause].Id, LikelihoodWire.From(l.Shown)))];
}

/// <summary>How likely something else is behind a complaint.</summary>
/// <param name="Clue">The complaint.</param>
/// <param name="Name">In words.</param>
/// <param name="Probability">How likely none of the family's causes that bring it is there.</param>
public sealed record UnexplainedWire(string Clue, string Name, double Probability);

/// <summary>Something to look at, to read or to try.</summary>
/// <param name="Look">What is looked at, read or tried: a test, an attribute, a position, a characteristic or a clearance.</param>
/// <param name="Kind">What sort of clue it is.</param>
/// <param name="Name">What it may show.</param>
/// <param name="Stage">When it can be looked at.</param>
/// <param name="Minutes">What looking costs.</param>
/// <param name="Chance">How likely it shows.</param>
/// <param name="Bits">Expected information about the causes.</param>
/// <param name="Saving">Expected saving in minor units, when costs were given.</param>
/// <param name="PerMinute">Bits for each minute; the saving for each minute when costs were given.</param>
/// <param name="Otherwise">How likely it shows with none of its causes there.</param>
/// <param name="Causes">How likely each of its causes brings it.</param>
/// <param name="Reasons">The same in words.</param>
public sealed record CheckWire(
    string Look,
    string Kind,
    string Name,
    string Stage,
    decimal Minutes,
    double Chance,
    double Bits,
    double? Saving,
    double PerMinute,
    LikelihoodWire Otherwise,
    ImmutableArray<ClueLinkWire> Causes,
    ImmutableArray<ReasonWire> Reasons)
{
    /// <summary>From the engine.</summary>
    public static CheckWire From(NextCheck check, CauseNetwork network) => new(
        check.Clue.Look, Kebab.Of(check.Clue.Kind), check.Clue.Name, Kebab.Of(check.Clue.Stage), check.Clue.Minutes, LikelihoodWire.Round(check.Chance),
        LikelihoodWire.Round(check.Bits), check.Saving, LikelihoodWire.Round(check.PerMinute), LikelihoodWire.From(check.Clue.Otherwise),
        ClueLinkWire.Of(check.Clue, network), [.. check.Reasons.Select(ReasonWire.From)]);
}
