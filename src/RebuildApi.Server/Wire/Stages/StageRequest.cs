using System.Collections.Immutable;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Stages;

/// <summary>A step of a unit: through the next gate, back to an earlier stage, or away unrepaired.</summary>
/// <param name="To">Where it goes. It is named so that two benches can't pass two gates with one thought.</param>
/// <param name="Person">Who lets it go.</param>
/// <param name="Note">What is noted; the reason, where it goes back or away unrepaired.</param>
/// <param name="NotAvailable">What could not be had, and why: readings before stripping, of a gearbox that came in a box.</param>
/// <param name="Exceptions">What the gate asks for and is left out over a signature, where the shop's policy allows it.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
public sealed record StageRequest(
    [OneOf("intake", "pre-strip", "teardown", "decision", "assembly", "final-test", "handed-over", "returned-unrepaired")] string To,
    [Words(100)] string Person,
    [Words(2000, Lines = true)] string? Note = null,
    [Entries(0, 20)] ImmutableArray<NotAvailableRequest>? NotAvailable = null,
    [Entries(0, 20)] ImmutableArray<ExceptionRequest>? Exceptions = null,
    [Id] string? Id = null);

/// <summary>Something that a gate asks for and that could not be had.</summary>
/// <param name="Requirement">Which requirement.</param>
/// <param name="Reason">Not available because …</param>
public sealed record NotAvailableRequest([Id] string Requirement, [Words(500)] string Reason);

/// <summary>Something that a gate asks for and that is left out over a signature.</summary>
/// <param name="Requirement">Which requirement.</param>
/// <param name="Reason">Why.</param>
/// <param name="Person">Who signs for it.</param>
public sealed record ExceptionRequest([Id] string Requirement, [Words(500)] string Reason, [Words(100)] string Person);

/// <summary>A check of the whole gearbox that a person signs for.</summary>
/// <param name="Check">Which: <c>interlock</c>, <c>function-test</c>, or one that the unit's family asks for (its <c>requirement</c> under <c>gates</c> of the family).</param>
/// <param name="Passed">Whether it passed.</param>
/// <param name="Person">Who signs.</param>
/// <param name="Bench">Where.</param>
/// <param name="Note">What is noted.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
public sealed record SignOffRequest(
    [Id] string Check,
    bool Passed,
    [Words(100)] string Person,
    [Words(100)] string Bench,
    [Words(2000, Lines = true)] string? Note = null,
    [Id] string? Id = null);
