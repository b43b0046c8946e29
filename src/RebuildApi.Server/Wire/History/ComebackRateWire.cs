using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Statistics;
using LimitSide = RebuildApi.Engine.Statistics.LimitSide;

namespace RebuildApi.Server.Wire.History;

/// <summary>How many units came back of those handed over, with the exact interval of 95 %.</summary>
/// <param name="Hits">How many came back.</param>
/// <param name="Of">Of how many.</param>
/// <param name="Share">The share.</param>
/// <param name="Low">Lower end of the interval.</param>
/// <param name="High">Upper end of the interval.</param>
/// <param name="Counted">Whether it was counted from the shop's records; otherwise the counts were sent.</param>
/// <param name="ByFamily">The same for each family.</param>
/// <param name="BySubject">The same for each thing that comebacks were laid to.</param>
/// <param name="Source">Where the method comes from.</param>
public sealed record ComebackRateWire(
    int Hits,
    int Of,
    double? Share,
    double? Low,
    double? High,
    bool Counted,
    ImmutableArray<NamedShareWire> ByFamily,
    ImmutableArray<NamedShareWire> BySubject,
    string Source)
{
    /// <summary>From the engine.</summary>
    public static ComebackRateWire From(Share s, bool counted, ImmutableArray<NamedShareWire> byFamily, ImmutableArray<NamedShareWire> bySubject) => new(
        s.Hits, s.Of, Numbers.Finite(s.Value), Numbers.Finite(s.Low), Numbers.Finite(s.High), counted, byFamily, bySubject, "Clopper and Pearson, Biometrika 26, 1934");
}

/// <summary>A share of something named.</summary>
/// <param name="Name">What.</param>
/// <param name="Share">The share.</param>
public sealed record NamedShareWire(string Name, ShareWire Share);

/// <summary>What the shop's own history says of a limit. Proposals only: a person decides, and puts a limit in force by the policy.</summary>
/// <param name="Family">The family.</param>
/// <param name="Kind">The kind of part.</param>
/// <param name="Characteristic">The characteristic.</param>
/// <param name="Count">How many parts that went out were read.</param>
/// <param name="Comebacks">How many of them came back for this.</param>
/// <param name="Against">The family's service limits.</param>
/// <param name="Acceptable">The comeback rate that the shop accepts.</param>
/// <param name="Proposals">What the history speaks for; empty when it carries nothing.</param>
/// <param name="Applied">Always false: nothing is put in force by itself.</param>
/// <param name="Source">Where the methods come from.</param>
/// <param name="Cautions">What stands before this answer.</param>
public sealed record LimitProposalsWire(
    string Family,
    string Kind,
    string Characteristic,
    int Count,
    int Comebacks,
    LimitsWire? Against,
    double? Acceptable,
    ImmutableArray<LimitProposalWire> Proposals,
    bool Applied,
    string Source,
    ImmutableArray<string> Cautions);

/// <summary>One limit that the history speaks for.</summary>
/// <param name="Side">Which limit: <c>low</c> or <c>high</c>.</param>
/// <param name="Direction"><c>tighter</c> or <c>looser</c>.</param>
/// <param name="Limit">The limit proposed.</param>
/// <param name="Beyond">Comebacks among parts beyond it; for a looser one, among the fifth of the parts nearest to the present limit.</param>
/// <param name="Within">Comebacks among the others.</param>
/// <param name="PValue">Chance of such a difference if the limit made none, the number of limits tried allowed for.</param>
public sealed record LimitProposalWire(string Side, string Direction, QuantityWire Limit, ShareWire Beyond, ShareWire Within, double? PValue)
{
    /// <summary>From the engine; the limit in SI.</summary>
    public static LimitProposalWire From(LimitSide side, string direction, LimitProposal p, Dimension dimension, Display show) => new(
        side == LimitSide.Low ? "low" : "high", direction, show.Si(p.Limit, dimension), ShareWire.From(p.Beyond), ShareWire.From(p.Within), Numbers.Finite(p.PValue));
}
