using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Server.Wire.History;

namespace RebuildApi.Server.Wire;

/// <summary>What would settle one inconclusive verdict.</summary>
/// <param name="Subject">The characteristic.</param>
/// <param name="Probability">Chance that the true value conforms, as things stand.</param>
/// <param name="Cheapest">The first step, cheapest first, that settles at least four cases in five; else the one that settles most; absent when none does.</param>
/// <param name="Steps">All steps, cheapest first.</param>
public sealed record SettlingWire(string Subject, double? Probability, SettlingStepWire? Cheapest, ImmutableArray<SettlingStepWire> Steps)
{
    /// <summary>From the engine.</summary>
    public static SettlingWire From(Verdict verdict, ImmutableArray<SettlingStep> steps) => new(
        verdict.Subject,
        Numbers.Finite(verdict.Probability),
        Settling.Cheapest(steps) is { } cheapest ? SettlingStepWire.From(cheapest) : null,
        [.. steps.Select(SettlingStepWire.From)]);
}

/// <summary>Something that may settle a verdict.</summary>
/// <param name="Code"><c>more-readings</c> with the instruments that were used, or <c>other-instrument</c>.</param>
/// <param name="Instrument">The other instrument of the shop.</param>
/// <param name="Readings">How many readings to take.</param>
/// <param name="Settles">In how many of the simulated cases the verdict is then sure, with its interval.</param>
public sealed record SettlingStepWire(string Code, string? Instrument, int Readings, ShareWire Settles) : IInWords
{
    /// <summary>From the engine.</summary>
    public static SettlingStepWire From(SettlingStep s) => new(s.Code, s.Instrument, s.Readings, ShareWire.From(s.Settles));

    /// <inheritdoc/>
    public string InWords() => FormattableString.Invariant($"{Readings} {Code} {Instrument} settles {Settles.Share:0.00}");
}
