using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>Whether the parts of one pairing may run together.</summary>
/// <param name="Rule">Id of the pairing rule.</param>
/// <param name="Outcome">The outcome.</param>
/// <param name="Severity">What it costs when it does not hold.</param>
/// <param name="Reasons">Why, the numbers behind it among the arguments.</param>
/// <param name="Cures">What would mend it, cheapest first where that is known.</param>
/// <param name="Settles">What to look at or read so that a doubt goes away.</param>
/// <param name="Rules">Whose rules.</param>
/// <param name="InputsSha256">Hash of what it was made from.</param>
public sealed record PairingVerdict(
    string Rule,
    Compatibility Outcome,
    Severity Severity,
    ImmutableArray<Reason> Reasons,
    ImmutableArray<Cure> Cures,
    ImmutableArray<Address> Settles,
    RuleIdentity Rules,
    string InputsSha256);
