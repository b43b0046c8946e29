using System.Collections.Immutable;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Diagnosis;

/// <summary>A test that was tried on a unit.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Test">Which.</param>
/// <param name="Shown">Whether it showed.</param>
/// <param name="Person">Who tried it.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When, UTC.</param>
public sealed record TestDoneWire(string Id, string Test, bool Shown, string Person, string Bench, DateTimeOffset Time)
{
    /// <summary>From the store.</summary>
    public static TestDoneWire From(TestDone done) => new(done.Id, done.Seen.Test, done.Seen.Shown, done.Seen.Taken.Person, done.Seen.Taken.Bench, done.Seen.Taken.At);
}

/// <summary>What was found to lie behind a unit's complaint. The newest statement counts, once the unit is handed over.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Causes">The causes that were there.</param>
/// <param name="Reason">How it is known.</param>
/// <param name="Person">Who says so.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When, UTC.</param>
public sealed record ConfirmedWire(string Id, ImmutableArray<string> Causes, string Reason, string Person, string Bench, DateTimeOffset Time)
{
    /// <summary>From the store.</summary>
    public static ConfirmedWire From(ConfirmedCauses c) => new(c.Id, c.Causes, c.Reason, c.Person, c.Bench, c.Time);
}

/// <summary>How common the causes of a family are: as declared, as they stand, and as the closed units would have them.</summary>
/// <param name="Family">The family.</param>
/// <param name="Units">How many closed units with confirmed causes there are.</param>
/// <param name="Accepted">The updates that were accepted, oldest first; the last stands.</param>
/// <param name="Causes">Each cause.</param>
public sealed record PriorsWire(string Family, int Units, ImmutableArray<PriorUpdateWire> Accepted, ImmutableArray<PriorWire> Causes);

/// <summary>How common one cause is.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Declared">What the family declares.</param>
/// <param name="DeclaredStrength">How many units that is worth.</param>
/// <param name="Stands">What stands now, with its range.</param>
/// <param name="StandsStrength">How many units that is worth.</param>
/// <param name="Confirmed">In how many closed units it was confirmed.</param>
/// <param name="Proposed">What it would be with all closed units counted in.</param>
/// <param name="ProposedStrength">How many units that would be worth.</param>
public sealed record PriorWire(
    string Cause, string Name, double Declared, double DeclaredStrength, LikelihoodWire Stands, double StandsStrength, int Confirmed, LikelihoodWire Proposed, double ProposedStrength);

/// <summary>An update of the priors that a person accepted.</summary>
/// <param name="Family">The family.</param>
/// <param name="Number">1, 2, 3 …</param>
/// <param name="Units">How many closed units were counted.</param>
/// <param name="Confirmed">Cause to in how many of them it was confirmed.</param>
/// <param name="Reason">Why it was accepted.</param>
/// <param name="Person">Who accepted it.</param>
/// <param name="Time">When, UTC.</param>
public sealed record PriorUpdateWire(string Family, int Number, int Units, IReadOnlyDictionary<string, int> Confirmed, string Reason, string Person, DateTimeOffset Time)
{
    /// <summary>From the store.</summary>
    public static PriorUpdateWire From(PriorUpdate u) => new(u.Family, u.Number, u.Units, u.Confirmed, u.Reason, u.Person, u.Time);
}
