using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>That a unit came back after it was handed over, and what that was laid to.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Unit">The unit as it was handed over.</param>
/// <param name="ReturnedAs">The unit that it was taken in as again, if it was.</param>
/// <param name="At">When it came back, UTC.</param>
/// <param name="Complaint">What was wrong with it.</param>
/// <param name="Words">The same in the owner's own words, if said.</param>
/// <param name="Confirmed">What the trouble was laid to; empty while nothing is confirmed.</param>
/// <param name="RestedOn">What the shop had on record of that when the unit went out.</param>
/// <param name="Person">Who records it.</param>
/// <param name="Supersedes">The record that it replaces, if any.</param>
public sealed record Comeback(
    string Id,
    string Unit,
    string? ReturnedAs,
    DateTimeOffset At,
    ImmutableArray<SymptomSeen> Complaint,
    string? Words,
    ImmutableArray<ConfirmedCause> Confirmed,
    ComebackBasis RestedOn,
    string Person,
    string? Supersedes);

/// <summary>One thing that a comeback was laid to.</summary>
/// <param name="Subject">A part by its position, a characteristic, a clearance or a pairing.</param>
/// <param name="Cause">Id of the family's cause, if it is one of those.</param>
/// <param name="Words">In the person's own words, if said.</param>
public sealed record ConfirmedCause(string Subject, string? Cause, string? Words);

/// <summary>What the unit went out on.</summary>
/// <param name="Family">The edition of the family's rules.</param>
/// <param name="Policy">The edition of the shop's policy.</param>
/// <param name="Judgement">The last judgement that was kept of it, if any.</param>
/// <param name="Measurements">The measurements of what the comeback was laid to.</param>
/// <param name="Trials">The trial assemblies of it.</param>
/// <param name="Instruments">The instruments that took them.</param>
public sealed record ComebackBasis(
    FamilyVersion Family, string Policy, string? Judgement, ImmutableArray<string> Measurements, ImmutableArray<string> Trials, ImmutableArray<string> Instruments);
