using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire;

/// <summary>One edition of the shop's policy.</summary>
/// <param name="Edition">1, 2, 3 …; 0 for what holds until the shop signs one of its own. The ETag carries it.</param>
/// <param name="Decision">How a doubtful value is decided.</param>
/// <param name="Probability">The conformance probability asked for.</param>
/// <param name="Duty">The duty that gearboxes go back to.</param>
/// <param name="Overdue">What becomes of readings by an instrument whose calibration had ended.</param>
/// <param name="Rules">Rules for a family, a criticality or both, in place of the general one; the most narrowly meant counts.</param>
/// <param name="Limits">The shop's own limits, which stand before a family's.</param>
/// <param name="Exceptions">The requirements of gates that a unit may go on without over a signature.</param>
/// <param name="Person">Who signed it.</param>
/// <param name="Reason">Why, in the person's own words.</param>
/// <param name="Since">From when on, UTC.</param>
public sealed record PolicyWire(
    long Edition,
    DecisionRule Decision,
    double Probability,
    string Duty,
    OverdueRule Overdue,
    ImmutableArray<PolicyRuleWire> Rules,
    ImmutableArray<ShopLimitWire> Limits,
    ImmutableArray<string> Exceptions,
    string? Person,
    string? Reason,
    DateTimeOffset? Since)
{
    /// <summary>From the store.</summary>
    public static PolicyWire From(PolicyEdition edition, Display show)
    {
        var (policy, signed) = (edition.Policy, edition.Number > 0);
        return new(
            edition.Number,
            policy.Decision,
            policy.Probability,
            policy.Duty,
            policy.Overdue,
            [
                .. (policy.ByFamily ?? []).Select(r => new PolicyRuleWire(r.Family, null, r.Decision, r.Probability)),
                .. (policy.ByCriticality ?? []).Select(r => new PolicyRuleWire(r.Family, r.Criticality, r.Decision, r.Probability)),
            ],
            [.. policy.Limits.Select(l => new ShopLimitWire(l.Family, l.Subject, LimitsWire.From(l.Limits, show)!))],
            edition.MayExcept ?? [],
            signed ? edition.Person : null,
            signed ? edition.Reason : null,
            signed ? edition.At : null);
    }
}

/// <summary>How a value near a limit is decided where a family, a criticality or both are meant.</summary>
/// <param name="Family">The family; absent for all.</param>
/// <param name="Criticality">What hangs on the value; absent for all.</param>
/// <param name="Decision">How a doubtful value is decided.</param>
/// <param name="Probability">The conformance probability asked for.</param>
public sealed record PolicyRuleWire(string? Family, Criticality? Criticality, DecisionRule Decision, double Probability) : IInWords
{
    /// <inheritdoc/>
    public string InWords() => FormattableString.Invariant($"{Family ?? "all families"}, {(Criticality is { } c ? Kebab.Of(c) : "all")}: {Kebab.Of(Decision)} {Probability}");
}

/// <summary>The shop's own limits for one characteristic or clearance.</summary>
/// <param name="Family">The family; absent for every family that has it.</param>
/// <param name="Subject">A characteristic (<c>position/characteristic</c>) or a clearance (its id).</param>
/// <param name="Limits">The limits.</param>
public sealed record ShopLimitWire(string? Family, string Subject, LimitsWire Limits) : IInWords
{
    /// <inheritdoc/>
    public string InWords() => Family is null ? Subject : $"{Family} {Subject}";
}

/// <summary>The whole policy as it is to stand from now on; what is left out falls back to the usual.</summary>
/// <param name="Person">Who signs.</param>
/// <param name="Reason">Why, in the person's own words.</param>
/// <param name="Decision">How a doubtful value is decided.</param>
/// <param name="Probability">The conformance probability asked for.</param>
/// <param name="Duty">The duty that gearboxes go back to.</param>
/// <param name="Overdue">What becomes of readings by an instrument whose calibration had ended.</param>
/// <param name="Rules">Rules for a family, a criticality or both.</param>
/// <param name="Limits">The shop's own limits.</param>
/// <param name="Exceptions">The requirements of gates that a unit may go on without over a signature. What can hurt a person is never left out.</param>
public sealed record PolicyRequest(
    [Words(100)] string Person,
    [Words(2000, Lines = true)] string Reason,
    DecisionRule Decision = DecisionRule.Guarded,
    [Between(0.501, 0.99999)] decimal Probability = 0.95m,
    [OneOf("ordinary", "severe")] string Duty = "ordinary",
    OverdueRule Overdue = OverdueRule.Flag,
    [Entries(0, 200)] ImmutableArray<PolicyRuleRequest>? Rules = null,
    [Entries(0, 1000)] ImmutableArray<ShopLimitRequest>? Limits = null,
    [Entries(0, 20)] ImmutableArray<string>? Exceptions = null);

/// <summary>A rule for a family, a criticality or both; at least one of them.</summary>
/// <param name="Decision">How a doubtful value is decided.</param>
/// <param name="Probability">The conformance probability asked for.</param>
/// <param name="Family">The family; all when not said.</param>
/// <param name="Criticality">What hangs on the value; all when not said.</param>
public sealed record PolicyRuleRequest(
    DecisionRule Decision, [Between(0.501, 0.99999)] decimal Probability, [Id] string? Family = null, Criticality? Criticality = null);

/// <summary>The shop's own limits for one characteristic or clearance; at least one end.</summary>
/// <param name="Family">The family.</param>
/// <param name="Subject">A characteristic (<c>position/characteristic</c>) or a clearance (its id).</param>
/// <param name="Source">Where the numbers come from, in words a person can follow.</param>
/// <param name="Low">The lowest value allowed.</param>
/// <param name="High">The highest value allowed.</param>
/// <param name="Target">The value wanted.</param>
public sealed record ShopLimitRequest(
    [Id] string Family,
    [Words(130)] string Subject,
    [Words(500)] string Source,
    SentQuantity? Low = null,
    SentQuantity? High = null,
    SentQuantity? Target = null);
