using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>A complaint that an owner brings.</summary>
/// <param name="Id">Lower case, digits and hyphens: <c>jumps-out-under-load</c>.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Gears">The gears it may belong to; empty when it is of the whole gearbox.</param>
public sealed record Symptom(string Id, Text Name, ImmutableArray<string> Gears)
{
    /// <summary>How likely it comes although none of the family's causes is there; none leaves it to the engine.</summary>
    public Likelihood? Leak { get; init; }

    /// <summary>
    /// How likely an owner words it wider or narrower than it comes: names one gear where it comes in all, or none where it comes in one; none leaves it to
    /// the engine.
    /// </summary>
    public Likelihood? Loosely { get; init; }
}

/// <summary>Something that may lie behind a symptom, the signs that show it, and how likely it makes each complaint.</summary>
/// <param name="Id">Lower case, digits and hyphens.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Prior">How common it is among units that come in, 0..1.</param>
/// <param name="Explains">The symptoms it brings.</param>
/// <param name="Signs">What can be found on the bench when it is so; any one is evidence.</param>
/// <param name="Source">Where this comes from.</param>
public sealed record Cause(
    string Id,
    Text Name,
    double Prior,
    ImmutableArray<SymptomLink> Explains,
    ImmutableArray<Sign> Signs,
    Source Source)
{
    /// <summary>How many units the prior is worth against counted ones; none leaves it to the engine.</summary>
    public double? PriorStrength { get; init; }

    /// <summary>Whether it lies outside the gearbox: ruled out before the gearbox comes out.</summary>
    public bool Outside { get; init; }
}

/// <summary>How likely a cause brings a symptom, as a judgement with its range.</summary>
/// <param name="Symptom">The symptom.</param>
/// <param name="Low">Lowest defensible probability.</param>
/// <param name="Best">Best judgement.</param>
/// <param name="High">Highest defensible probability.</param>
/// <param name="Gear">The gear in which it brings the symptom; none when in any.</param>
public sealed record SymptomLink(string Symptom, double Low, double Best, double High, string? Gear = null)
{
    /// <summary>When it brings the symptom; none when always.</summary>
    public SymptomContext? When { get; init; }
}

/// <summary>Something that can be found on the bench.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "is")]
[JsonDerivedType(typeof(AttributeSign), "attribute")]
[JsonDerivedType(typeof(DamageSign), "damage")]
[JsonDerivedType(typeof(VerdictSign), "verdict")]
public abstract record Sign
{
    private protected Sign()
    {
    }

    /// <summary>How likely it is found when the cause is there; none leaves it to the engine.</summary>
    public Likelihood? Found { get; init; }

    /// <summary>How likely it is found although none of its causes is there; none leaves it to the engine.</summary>
    public Likelihood? Otherwise { get; init; }

    /// <summary>Minutes to look or to read; none leaves it to the engine.</summary>
    public decimal? Minutes { get; init; }
}

/// <summary>A part has one of these attribute values.</summary>
/// <param name="Position">Where.</param>
/// <param name="Attribute">Which attribute.</param>
/// <param name="Values">Any of these.</param>
public sealed record AttributeSign(string Position, string Attribute, ImmutableArray<string> Values) : Sign;

/// <summary>A part has one of these classes of damage.</summary>
/// <param name="Position">Where.</param>
/// <param name="Classes">Any of these.</param>
/// <param name="Place">The feature or side, or <c>*</c>.</param>
public sealed record DamageSign(string Position, ImmutableArray<string> Classes, string Place) : Sign;

/// <summary>A characteristic (<c>position/characteristic</c>) or a clearance (its id) is nonconforming.</summary>
/// <param name="Subject">Which.</param>
public sealed record VerdictSign(string Subject) : Sign
{
    /// <summary>Beyond which limit; none when either tells.</summary>
    public LimitSide? Side { get; init; }
}

/// <summary>One of the two limits.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<LimitSide>))]
public enum LimitSide
{
    /// <summary>Below the low limit.</summary>
    Below,

    /// <summary>Above the high limit.</summary>
    Above,
}
