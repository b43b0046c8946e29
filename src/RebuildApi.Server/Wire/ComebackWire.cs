using System.Collections.Immutable;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire;

/// <summary>That a unit came back after it was handed over, and what that was laid to.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Unit">The unit as it was handed over.</param>
/// <param name="ReturnedAs">The unit that it was taken in as again.</param>
/// <param name="Time">When it came back, UTC.</param>
/// <param name="Complaint">What was wrong with it.</param>
/// <param name="Words">The same in the owner's own words.</param>
/// <param name="Confirmed">What the trouble was laid to; empty while nothing is confirmed.</param>
/// <param name="RestedOn">What the shop had on record of that.</param>
/// <param name="Person">Who recorded it.</param>
/// <param name="Supersedes">The record that it replaces.</param>
public sealed record ComebackWire(
    string Id,
    string Unit,
    string? ReturnedAs,
    DateTimeOffset Time,
    ImmutableArray<SymptomSeenWire> Complaint,
    string? Words,
    ImmutableArray<ConfirmedCauseWire> Confirmed,
    ComebackBasisWire RestedOn,
    string Person,
    string? Supersedes)
{
    /// <summary>From the store.</summary>
    public static ComebackWire From(Comeback c) => new(
        c.Id,
        c.Unit,
        c.ReturnedAs,
        c.At,
        [.. c.Complaint.Select(s => new SymptomSeenWire(s.Symptom, s.Gear))],
        c.Words,
        [.. c.Confirmed.Select(x => new ConfirmedCauseWire(x.Subject, x.Cause, x.Words))],
        ComebackBasisWire.From(c),
        c.Person,
        c.Supersedes);
}

/// <summary>One thing that a comeback was laid to.</summary>
/// <param name="Subject">A part by its position, a characteristic, a clearance or a pairing.</param>
/// <param name="Cause">Id of the family's cause.</param>
/// <param name="Words">In the person's own words.</param>
public sealed record ConfirmedCauseWire(string Subject, string? Cause, string? Words) : IInWords
{
    /// <inheritdoc/>
    public string InWords() => Cause is null ? Subject : $"{Subject}: {Cause}";
}

/// <summary>What the unit went out on.</summary>
/// <param name="Rules">The edition of the family's rules.</param>
/// <param name="Policy">The edition of the shop's policy.</param>
/// <param name="Judgement">The judgement that was kept when it was handed over; else the last that was kept.</param>
/// <param name="Measurements">Ids of the measurements of what the comeback was laid to.</param>
/// <param name="Trials">Ids of the trial assemblies of it.</param>
/// <param name="Instruments">Ids of the instruments that took them.</param>
/// <param name="Links">Where to read all this: how it went out, the judgement with the hash of its rules, the readings, each instrument, the family, the policy.</param>
public sealed record ComebackBasisWire(
    FamilyEditionWire Rules,
    string Policy,
    string? Judgement,
    ImmutableArray<string> Measurements,
    ImmutableArray<string> Trials,
    ImmutableArray<string> Instruments,
    ImmutableArray<string> Links)
{
    /// <summary>From the store.</summary>
    public static ComebackBasisWire From(Comeback c)
    {
        var on = c.RestedOn;
        return new(FamilyEditionWire.From(on.Family), on.Policy, on.Judgement, on.Measurements, on.Trials, on.Instruments, [.. LinksOf(c.Unit, on)]);
    }

    private static IEnumerable<string> LinksOf(string unit, ComebackBasis on)
    {
        yield return $"/v1/units/{unit}/stages";
        if (on.Judgement is { } judgement)
            yield return $"/v1/units/{unit}/judgements/{judgement}";
        if (!on.Measurements.IsEmpty)
            yield return $"/v1/units/{unit}/measurements";
        if (!on.Trials.IsEmpty)
            yield return $"/v1/units/{unit}/trials";
        foreach (var instrument in on.Instruments)
            yield return $"/v1/instruments/{instrument}";
        yield return $"/v1/families/{on.Family.Id}";
        yield return "/v1/policy/editions";
    }
}

/// <summary>A comeback to be recorded.</summary>
/// <param name="Person">Who records it.</param>
/// <param name="Time">When it came back; now when not said.</param>
/// <param name="ReturnedAs">The unit that it was taken in as again.</param>
/// <param name="Complaint">What was wrong with it.</param>
/// <param name="Words">The same in the owner's own words.</param>
/// <param name="Confirmed">What the trouble was laid to.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
/// <param name="Supersedes">The record that it replaces, once more is known.</param>
public sealed record ComebackRequest(
    [Words(100)] string Person,
    DateTimeOffset? Time = null,
    [Id] string? ReturnedAs = null,
    [Entries(0, 50)] ImmutableArray<SymptomRequest>? Complaint = null,
    [Words(2000, Lines = true)] string? Words = null,
    [Entries(0, 50)] ImmutableArray<ConfirmedCauseRequest>? Confirmed = null,
    [Id] string? Id = null,
    [Id] string? Supersedes = null);

/// <summary>One thing that a comeback is laid to.</summary>
/// <param name="Subject">A part by its position, a characteristic, a clearance or a pairing.</param>
/// <param name="Cause">Id of the family's cause, if it is one of those.</param>
/// <param name="Words">In the person's own words.</param>
public sealed record ConfirmedCauseRequest([Words(130)] string Subject, [Id] string? Cause = null, [Words(500)] string? Words = null);
