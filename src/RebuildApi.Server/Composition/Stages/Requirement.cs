using System.Collections.Immutable;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>Something that must be there before a unit passes a gate.</summary>
/// <param name="Id">Its id, stable: <c>approval</c>.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Leave">Whether a unit may ever go on without it.</param>
/// <param name="Find">What is not there; empty when it is met.</param>
public sealed record Requirement(string Id, string Name, Leave Leave, Func<GateFacts, IEnumerable<Unmet>> Find)
{
    /// <summary>The word by which the shop's policy allows an exception to it.</summary>
    public string PolicyWord { get; init; } = Id;

    /// <summary>Why the family asks for it; none for what every unit needs.</summary>
    public string? Reason { get; init; }
}

/// <summary>One thing that a requirement misses.</summary>
/// <param name="Subject">What it is about: a part, a characteristic, a clearance, a pairing; none when it is about the unit.</param>
/// <param name="Words">What is missing, in plain words.</param>
/// <param name="Fix">What to do about it.</param>
/// <param name="IsSafety">Whether a person can be hurt by it: then it is never left out.</param>
public sealed record Unmet(string? Subject, string Words, string Fix, bool IsSafety = false);

/// <summary>Whether a unit may go on without what a requirement asks for.</summary>
public enum Leave
{
    /// <summary>Never.</summary>
    Never,

    /// <summary>When it could not be had, with the reason: a gearbox that came in a box can't be turned by hand any more.</summary>
    NotAvailable,

    /// <summary>Over a signature, when the shop's policy allows it.</summary>
    Exception,
}

/// <summary>A requirement held against a unit.</summary>
/// <param name="Of">The requirement.</param>
/// <param name="Unmet">What is not there.</param>
/// <param name="MayLeave">Whether the unit may go on without that now.</param>
public sealed record Held(Requirement Of, ImmutableArray<Unmet> Unmet, bool MayLeave)
{
    /// <summary>Whether all is there.</summary>
    public bool IsMet => Unmet.IsEmpty;
}
