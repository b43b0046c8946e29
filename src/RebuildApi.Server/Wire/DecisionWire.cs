using System.Collections.Frozen;
using System.Collections.Immutable;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire;

/// <summary>What a person chose against or within a verdict.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Choice">What was chosen.</param>
/// <param name="Reason">Why, in the person's own words.</param>
/// <param name="Person">Who signs.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="VerdictOutcome">The outcome that stood when it was made.</param>
/// <param name="InputsSha256">The inputs of that verdict.</param>
/// <param name="Supersedes">The decision it replaces.</param>
public sealed record DecisionWire(
    string Id, string Subject, string Choice, string Reason, string Person, string Bench, DateTimeOffset Time, string VerdictOutcome, string InputsSha256, string? Supersedes)
{
    /// <summary>From the store.</summary>
    public static DecisionWire From(Decision d) =>
        new(d.Id, d.Subject, d.Choice, d.Reason, d.Person, d.Bench, d.At, d.VerdictOutcome, d.InputsSha256, d.Supersedes);
}

/// <summary>A decision as it stands beside a verdict.</summary>
/// <param name="Id">The decision.</param>
/// <param name="Choice">What was chosen.</param>
/// <param name="Reason">Why, in the person's own words.</param>
/// <param name="Person">Who signed.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="VerdictOutcome">The outcome that stood when it was made.</param>
/// <param name="SameInputs">Whether what is known is still what was known when it was made.</param>
public sealed record DecisionBesideWire(string Id, string Choice, string Reason, string Person, DateTimeOffset Time, string VerdictOutcome, bool SameInputs);

/// <summary>The decisions of a unit, looked up by what they are about.</summary>
public sealed class DecisionsBeside
{
    private readonly FrozenDictionary<string, Decision> _latest;
    private readonly string _inputs;

    /// <summary>Takes the latest decision of each subject.</summary>
    public DecisionsBeside(ImmutableArray<Decision> decisions, string inputsSha256)
    {
        _inputs = inputsSha256;
        _latest = decisions.GroupBy(d => d.Subject, StringComparer.Ordinal).ToFrozenDictionary(g => g.Key, g => g.MaxBy(d => d.At)!, StringComparer.Ordinal);
    }

    /// <summary>The decision on a subject, if there is one.</summary>
    public DecisionBesideWire? On(string subject) => _latest.TryGetValue(subject, out var d)
        ? new(d.Id, d.Choice, d.Reason, d.Person, d.At, d.VerdictOutcome, d.InputsSha256 == _inputs)
        : null;
}

/// <summary>A decision to be recorded. It never turns a verdict into a conforming one: it stands beside it.</summary>
/// <param name="Subject">What it is about: a position, an address, a clearance or a pairing, as the answers name it.</param>
/// <param name="Choice">What is chosen.</param>
/// <param name="Reason">Why, in the person's own words.</param>
/// <param name="Person">Who signs.</param>
/// <param name="Bench">Where.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
/// <param name="Supersedes">The decision it replaces.</param>
public sealed record DecisionRequest(
    [Words(130)] string Subject,
    [OneOf("reuse", "rework", "replace", "accept")] string Choice,
    [Words(2000, Lines = true)] string Reason,
    [Words(100)] string Person,
    [Words(100)] string Bench,
    [Id] string? Id = null,
    [Id] string? Supersedes = null);
