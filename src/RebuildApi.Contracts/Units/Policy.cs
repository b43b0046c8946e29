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
    /// <summary>What becomes of readings by an instrument whose calibration had ended; flagged unless the shop says otherwise.</summary>
    public OverdueRule Overdue { get; init; }

    /// <summary>Rules that differ with what hangs on a value; none when one rule serves all.</summary>
    public IReadOnlyList<CriticalityRule>? ByCriticality { get; init; }

    /// <summary>Rules of single families in place of the general one; none when there are none.</summary>
    public IReadOnlyList<FamilyRule>? ByFamily { get; init; }

    /// <summary>
    /// The policy as it stands for one family: what it says of other families is left out, and what it says of this one stands before what it
    /// says of all.
    /// </summary>
    public Policy Of(string family)
    {
        var own = ByFamily?.FirstOrDefault(r => r.Family == family);
        return this with
        {
            Decision = own?.Decision ?? Decision,
            Probability = own?.Probability ?? Probability,
            ByFamily = null,
            ByCriticality = ByCriticality is null ? null : [.. ByCriticality.Where(r => r.Family is null || r.Family == family).OrderByDescending(r => r.Family is not null)],
            Limits = [.. Limits.Where(l => l.Family is null || l.Family == family).OrderByDescending(l => l.Family is not null)],
        };
    }

    /// <summary>The policy as it stands for one criticality: its own rule in place of the general one, if it has one.</summary>
    public Policy For(Criticality criticality) => ByCriticality?.FirstOrDefault(r => r.Criticality == criticality) is { } own
        ? this with { Decision = own.Decision, Probability = own.Probability }
        : this;

    /// <summary>Guarded, one-sided 95 %, ordinary duty, no limits of its own.</summary>
    [JsonIgnore]
    public static Policy Default { get; } = new("default", DecisionRule.Guarded, 0.95, "ordinary", []);
}

/// <summary>The shop's own limits for one characteristic or clearance.</summary>
/// <param name="Subject">A characteristic (<c>position/characteristic</c>) or a clearance (its id).</param>
/// <param name="Limits">The limits.</param>
public sealed record ShopLimit(string Subject, Limits Limits)
{
    /// <summary>The family whose subject is meant; none for every family that has it.</summary>
    public string? Family { get; init; }
}

/// <summary>How a value near a limit is decided for one criticality.</summary>
/// <param name="Criticality">What hangs on the value.</param>
/// <param name="Decision">How a doubtful value is decided.</param>
/// <param name="Probability">The conformance probability asked for, 0.5..1 (exclusive).</param>
public sealed record CriticalityRule(Criticality Criticality, DecisionRule Decision, double Probability)
{
    /// <summary>The family that it holds for; none for all.</summary>
    public string? Family { get; init; }
}

/// <summary>How a value near a limit is decided in one family.</summary>
/// <param name="Family">The family.</param>
/// <param name="Decision">How a doubtful value is decided.</param>
/// <param name="Probability">The conformance probability asked for, 0.5..1 (exclusive).</param>
public sealed record FamilyRule(string Family, DecisionRule Decision, double Probability);

/// <summary>What becomes of readings by an instrument whose calibration had ended.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<OverdueRule>))]
public enum OverdueRule
{
    /// <summary>They count, and the verdict says so.</summary>
    Flag,

    /// <summary>They do not count.</summary>
    Block,
}

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
