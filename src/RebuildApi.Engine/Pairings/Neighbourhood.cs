using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings;

/// <summary>A sleeve and every gear that it serves, judged together: what is right for one side may be wrong for the other.</summary>
/// <param name="Sleeve">The position of the sleeve.</param>
/// <param name="Outcome">The worst of the sides as the parts are now.</param>
/// <param name="Choices">What comes out with each form of sleeve.</param>
/// <param name="Reasons">What the choices say together.</param>
/// <param name="Cures">Exchanges after which every side is compatible, fewest positions first; each was tried.</param>
/// <param name="Settles">What to look at so that a doubt goes away.</param>
public sealed record Neighbourhood(
    string Sleeve,
    Compatibility Outcome,
    ImmutableArray<SleeveChoice> Choices,
    ImmutableArray<Reason> Reasons,
    ImmutableArray<Cure> Cures,
    ImmutableArray<Address> Settles);

/// <summary>One form of sleeve, and what then comes out on each side.</summary>
/// <param name="Form">The form: <c>straight</c> or <c>back-tapered</c>.</param>
/// <param name="IsPresent">Whether the sleeve has this form now; its other form is a new sleeve of which nothing else is known.</param>
/// <param name="Outcome">The worst of the sides.</param>
/// <param name="Sides">The verdict of each rule that the sleeve takes part in, without cures of its own.</param>
public sealed record SleeveChoice(string Form, bool IsPresent, Compatibility Outcome, ImmutableArray<PairingVerdict> Sides);
