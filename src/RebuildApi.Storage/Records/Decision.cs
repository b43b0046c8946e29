namespace RebuildApi.Storage;

/// <summary>What a person chose against or within a verdict. It never turns a verdict into a conforming one: it stands beside it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Subject">What it is about: a position, an address, a clearance or a pairing.</param>
/// <param name="Choice">What was chosen: <c>reuse</c>, <c>rework</c>, <c>replace</c>, <c>accept</c>.</param>
/// <param name="Reason">Why, in the person's own words.</param>
/// <param name="Person">Who signs.</param>
/// <param name="Bench">Where.</param>
/// <param name="At">When, UTC.</param>
/// <param name="VerdictOutcome">The outcome that stood when it was made.</param>
/// <param name="InputsSha256">The inputs of that verdict.</param>
/// <param name="Supersedes">The decision it replaces, if any.</param>
public sealed record Decision(
    string Id,
    string Subject,
    string Choice,
    string Reason,
    string Person,
    string Bench,
    DateTimeOffset At,
    string VerdictOutcome,
    string InputsSha256,
    string? Supersedes);
