using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Plans;

/// <summary>What a plan claims of itself.</summary>
/// <param name="Parts">Place to whether its part conforms; index 0 speaks for all pieces of a pack together.</param>
/// <param name="Clearances">Clearance to its outcome and its gap in nanometres.</param>
/// <param name="Pairings">Pairing to its outcome; those not named are claimed to be compatible.</param>
public sealed record PlanClaims(
    IReadOnlyDictionary<(string Position, int Index), Outcome> Parts,
    IReadOnlyDictionary<string, (Outcome Outcome, double? Gap)> Clearances,
    IReadOnlyDictionary<string, Compatibility> Pairings);

/// <summary>What the checker found, and how much it worked out, so that a test can see that something was checked.</summary>
/// <param name="Faults">What is wrong; empty when nothing is.</param>
/// <param name="Verdicts">How many verdicts on parts were worked out again.</param>
/// <param name="Gaps">How many clearances.</param>
/// <param name="Pairings">How many pairings.</param>
public sealed record PlanCheck(IReadOnlyList<string> Faults, int Verdicts, int Gaps, int Pairings);
