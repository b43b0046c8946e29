using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire.Shop;

namespace RebuildApi.Server.Wire;

/// <summary>A sleeve and every gear that it serves, judged together.</summary>
/// <param name="Sleeve">The position of the sleeve.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Outcome">The worst of the sides as the parts are now. Only compatible counts as good.</param>
/// <param name="Choices">What comes out with each form of sleeve.</param>
/// <param name="Reasons">What the choices say together.</param>
/// <param name="Cures">Exchanges after which every side is compatible, the cheapest first where the shop's list has every price, else fewest positions first; each was tried.</param>
/// <param name="Settles">What to look at or read so that a doubt goes away.</param>
public sealed record NeighbourhoodWire(
    string Sleeve,
    string Name,
    Compatibility Outcome,
    ImmutableArray<SleeveChoiceWire> Choices,
    ImmutableArray<ReasonWire> Reasons,
    ImmutableArray<CureWire> Cures,
    ImmutableArray<string> Settles)
{
    /// <summary>From the engine.</summary>
    public static NeighbourhoodWire From(Neighbourhood n, FamilyIndex family, Display show, KindPrices? prices = null) => new(
        n.Sleeve,
        show.Words(family.Positions[n.Sleeve].Name),
        n.Outcome,
        [.. n.Choices.Select(c => SleeveChoiceWire.From(c, family, show))],
        [.. n.Reasons.Select(r => ReasonWire.From(r, family))],
        CureWire.CheapestFirst(n.Cures, family, show, prices),
        [.. n.Settles.Select(s => s.ToString())]);
}

/// <summary>One form of sleeve, and what then comes out on each side.</summary>
/// <param name="Form">The form.</param>
/// <param name="Present">Whether the sleeve has this form now; its other form is a new sleeve.</param>
/// <param name="Outcome">The worst of the sides.</param>
/// <param name="Sides">Each gear's side.</param>
public sealed record SleeveChoiceWire(string Form, bool Present, Compatibility Outcome, ImmutableArray<PairingOutcomeWire> Sides) : IInWords
{
    /// <summary>From the engine.</summary>
    public static SleeveChoiceWire From(SleeveChoice c, FamilyIndex family, Display show) =>
        new(c.Form, c.IsPresent, c.Outcome, [.. c.Sides.Select(s => PairingOutcomeWire.From(s, family, show))]);

    /// <inheritdoc/>
    public string InWords() => $"{Form} {Kebab.Of(Outcome)}";
}
