using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire.Shop;

namespace RebuildApi.Server.Wire;

/// <summary>May the parts of one pairing run together?</summary>
/// <param name="Pairing">Id of the pairing rule.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Positions">The positions it is about.</param>
/// <param name="Outcome">The outcome. Only compatible counts as good.</param>
/// <param name="Severity">What it costs when it does not hold.</param>
/// <param name="Consequence">What then happens; said when it does not hold.</param>
/// <param name="Reasons">Why.</param>
/// <param name="Cures">What would mend it: those that are sufficient first, the cheapest of them first.</param>
/// <param name="Settles">What to look at or read so that a doubt goes away.</param>
/// <param name="Decision">What a person chose. The outcome stays what it is.</param>
/// <param name="Rules">Whose rules.</param>
/// <param name="InputsSha256">Hash of what it was made from.</param>
public sealed record PairingVerdictWire(
    string Pairing,
    string Name,
    ImmutableArray<string> Positions,
    Compatibility Outcome,
    Severity Severity,
    string? Consequence,
    ImmutableArray<ReasonWire> Reasons,
    ImmutableArray<CureWire> Cures,
    ImmutableArray<string> Settles,
    DecisionBesideWire? Decision,
    RuleWire Rules,
    string InputsSha256)
{
    /// <summary>From the contract.</summary>
    public static PairingVerdictWire From(PairingVerdict verdict, FamilyIndex family, DecisionsBeside decisions, Display show, KindPrices? prices = null)
    {
        // A rule in code has no declaration behind it: it is called by its id.
        var rule = family.Pairings.GetValueOrDefault(verdict.Rule);
        return new(
            verdict.Rule,
            rule is null ? verdict.Rule : show.Words(rule.Name),
            rule is null ? [] : [.. rule.Roles.Values.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            verdict.Outcome,
            verdict.Severity,
            rule is null || verdict.Outcome == Compatibility.Compatible ? null : show.Words(rule.Consequence),
            [.. verdict.Reasons.Select(r => ReasonWire.From(r, family))],
            CureWire.CheapestFirst(verdict.Cures, family, show, prices),
            [.. verdict.Settles.Select(s => s.ToString())],
            decisions.On(verdict.Rule),
            RuleWire.From(verdict.Rules),
            verdict.InputsSha256);
    }
}

/// <summary>Something that mends a broken pairing.</summary>
/// <param name="Id">Unique within its rule.</param>
/// <param name="Text">What to do.</param>
/// <param name="Sufficient">Whether the steps alone make the pairing compatible.</param>
/// <param name="Steps">The parts to exchange.</param>
/// <param name="NewParts">How many parts that is.</param>
/// <param name="Minutes">Bench time of the family's assembly steps on such parts.</param>
/// <param name="Price">What the parts cost by the shop's price list, the cheapest that will do; none when one of them is not on it.</param>
public sealed record CureWire(string Id, string Text, bool Sufficient, ImmutableArray<CureStepWire> Steps, int NewParts, decimal Minutes, MoneyWire? Price) : IInWords
{
    /// <summary>Those that are sufficient first, the cheapest of them first where the shop's list has every price.</summary>
    public static ImmutableArray<CureWire> CheapestFirst(ImmutableArray<Cure> cures, FamilyIndex family, Display show, KindPrices? prices) =>
        [.. CureCosts.CheapestFirst(cures, family, prices is null ? null : prices.Of).Select(c => From(c, family, show, prices))];

    private static CureWire From(Cure cure, FamilyIndex family, Display show, KindPrices? prices)
    {
        var cost = CureCosts.Of(cure, family, prices is null ? null : prices.Of);
        return new(
            cure.Id, show.Words(cure.Text), cure.Sufficient,
            [.. cure.Steps.Select(s => new CureStepWire(s.Position, s.Attribute, s.Value, s.Characteristic, LimitsWire.From(s.Within, show)))],
            cost.NewParts, cost.Minutes, cost.Price is { } price ? MoneyWire.Of(price, prices!.Rates) : null);
    }

    /// <inheritdoc/>
    public string InWords() => Text;
}

/// <summary>Fit, at a position, a part that has an attribute value or a characteristic.</summary>
/// <param name="Position">Where.</param>
/// <param name="Attribute">Which attribute.</param>
/// <param name="Value">Its value.</param>
/// <param name="Characteristic">Which characteristic.</param>
/// <param name="Within">The limits it must lie in.</param>
public sealed record CureStepWire(string Position, string? Attribute, string? Value, string? Characteristic, LimitsWire? Within);
