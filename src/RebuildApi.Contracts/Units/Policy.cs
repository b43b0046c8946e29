using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>The shop's rules, a versioned input of every verdict.</summary>
/// <param name="Version">Which edition of the shop's policy.</param>
/// <param name="Decision">How a doubtful value is decided.</param>
/// <param name="Probability">The conformance probability asked for, 0.5..1 (exclusive); 0.95 unless the shop says otherwise.</param>
/// <param name="Duty">The duty the gearbox goes back to: <c>ordinary</c>, <c>severe</c>.</param>
/// <param name="Limits">The shop's own limits, which stand before the family's.</param>
public sealed record Policy(
    string Version,
    DecisionRule Decision,
    double Probability,
    string Duty,
    ImmutableArray<ShopLimit> Limits)
{
    /// <summary>Guarded, one-sided 95 %, ordinary duty, no limits of its own.</summary>
    [JsonIgnore]
    public static Policy Default { get; } = new("default", DecisionRule.Guarded, 0.95, "ordinary", []);
}

/// <summary>The shop's own limits for one characteristic or clearance.</summary>
/// <param name="Subject">A characteristic (<c>position/characteristic</c>) or a clearance (its id).</param>
/// <param name="Limits">The limits.</param>
public sealed record ShopLimit(string Subject, Limits Limits);

/// <summary>How a value near a limit is decided.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<DecisionRule>))]
public enum DecisionRule
{
    /// <summary>
    /// Conforming only when the chance of conforming reaches the policy's probability, nonconforming only when the chance of not conforming
    /// does; inconclusive between (ISO 14253-1 idea, one-sided guard band).
    /// </summary>
    Guarded,

    /// <summary>The value itself decides (simple acceptance, ILAC-G8): up to 50 % risk at the limit.</summary>
    SimpleAcceptance,

    /// <summary>Conforming when the chance reaches the policy's probability, else nonconforming.</summary>
    ProbabilityThreshold,
}
