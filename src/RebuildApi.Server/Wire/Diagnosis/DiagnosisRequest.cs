using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Diagnosis;

/// <summary>What is known of a gearbox, whether the shop has it or not.</summary>
/// <param name="Complaint">What is wrong with it.</param>
/// <param name="Tests">Tests of the family that were tried.</param>
/// <param name="Findings">What was seen on its parts.</param>
/// <param name="Limits">Characteristics and clearances whose standing to their limits is known.</param>
/// <param name="Apart">Whether it is apart already: then only tests on the bench are named.</param>
/// <param name="Costs">What it costs to be wrong, where the next check is to be chosen by money instead of information.</param>
/// <param name="Savings">What a reading is expected to save elsewhere, such as in the plan of the unit.</param>
/// <param name="Checks">How many next checks are wanted.</param>
public sealed record DiagnosisRequest(
    [Entries(0, 20)] ImmutableArray<SymptomRequest>? Complaint = null,
    [Entries(0, 100)] ImmutableArray<TriedRequest>? Tests = null,
    [Entries(0, 200)] ImmutableArray<SeenRequest>? Findings = null,
    [Entries(0, 200)] ImmutableArray<LimitRequest>? Limits = null,
    bool Apart = false,
    [Entries(0, 200)] ImmutableArray<CauseCostRequest>? Costs = null,
    [Entries(0, 200)] ImmutableArray<SavingRequest>? Savings = null,
    [Between(0, 500)] int Checks = 10);

/// <summary>A test that was tried.</summary>
/// <param name="Test">Which.</param>
/// <param name="Shown">Whether it showed.</param>
public sealed record TriedRequest([Id] string Test, bool Shown);

/// <summary>Something seen on a part. Exactly one of damage, attribute and sound.</summary>
/// <param name="Position">Where the part sits.</param>
/// <param name="Damage">Damage that was seen.</param>
/// <param name="Attribute">An attribute that was seen.</param>
/// <param name="Sound">Inspected as the family asks, and no damage found.</param>
public sealed record SeenRequest([Words(70)] string Position, DamageRequest? Damage = null, AttributeRequest? Attribute = null, bool Sound = false);

/// <summary>How a value stands to its limits.</summary>
/// <param name="Subject">A characteristic (<c>position/characteristic</c>) or a clearance.</param>
/// <param name="Standing">Within them, below the low one, above the high one, or beyond one that is not said.</param>
public sealed record LimitRequest([Words(130)] string Subject, [OneOf("within", "below", "above", "beyond")] string Standing);

/// <summary>What it costs to be wrong about a cause, in whole minor units of the shop's currency.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Repair">What putting it right costs: lost when it was not there.</param>
/// <param name="Missed">What leaving it costs when it was there: the comeback.</param>
public sealed record CauseCostRequest([Id] string Cause, [Between(0, 2000000000)] int Repair, [Between(0, 2000000000)] int Missed);

/// <summary>What a reading is expected to save, in minor units of the shop's currency.</summary>
/// <param name="Look">What is read, as the checks name it: a characteristic, a clearance, an attribute or a test.</param>
/// <param name="Saving">How much.</param>
public sealed record SavingRequest([Words(130)] string Look, [Between(0, 2000000000)] int Saving);

/// <summary>A test of the family that was tried on a unit.</summary>
/// <param name="Test">Which.</param>
/// <param name="Shown">Whether it showed.</param>
/// <param name="Person">Who tried it.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When; now when not said.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
public sealed record TestDoneRequest(
    [Id] string Test, bool Shown, [Words(100)] string Person, [Words(100)] string Bench, DateTimeOffset? Time = null, [Id] string? Id = null);

/// <summary>What was found to lie behind a unit's complaint.</summary>
/// <param name="Causes">The causes that were there; none when something else was.</param>
/// <param name="Reason">How it is known, in the person's own words.</param>
/// <param name="Person">Who says so.</param>
/// <param name="Bench">Where.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
public sealed record ConfirmRequest(
    [Entries(0, 50), Id] ImmutableArray<string> Causes, [Words(2000, Lines = true)] string Reason, [Words(100)] string Person, [Words(100)] string Bench, [Id] string? Id = null);

/// <summary>That counted units are to go into the priors of a family.</summary>
/// <param name="Units">How many closed units the person saw counted: when another was closed since, it is looked at again.</param>
/// <param name="Reason">Why, in the person's own words.</param>
/// <param name="Person">Who accepts it.</param>
public sealed record AcceptPriorsRequest([Between(1, 1e9)] int Units, [Words(2000, Lines = true)] string Reason, [Words(100)] string Person);
