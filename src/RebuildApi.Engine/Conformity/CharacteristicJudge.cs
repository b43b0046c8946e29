using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.MonteCarlo;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Conformity;

/// <summary>One characteristic of a placed part → its verdict.</summary>
public static class CharacteristicJudge
{
    /// <summary>
    /// Judges a characteristic by the shop's limits, else the position's, else the kind's service limits. A part that was not
    /// read is not assessed, a new one too: its drawing says what it should be and stands in for it in clearances and plans, not in a verdict on itself.
    /// </summary>
    /// <returns>The verdict, or null when there are no limits.</returns>
    public static Verdict? Judge(PlacedComponent placed, Characteristic characteristic, EstimateBook book)
    {
        var at = new Address(placed.Placement.Position, characteristic.Id);
        if (LimitsAt(at, book.View) is not { } limits)
            return null;
        var subject = SubjectOf(placed, characteristic);
        var (estimate, assessment) = Assess(subject, placed, characteristic, limits, book);
        return new Verdict(
            subject,
            assessment.Outcome,
            assessment.Probability,
            estimate,
            limits,
            assessment.Margin,
            assessment.Reasons,
            assessment.WouldChange,
            book.View.Family.IdentityOf(at.ToString()),
            book.View.InputsSha256)
        {
            Extremes = ExtremesOf(placed, characteristic, book),
        };
    }

    /// <summary>Smallest, largest and their spread, where the family asks for more of the readings than one number.</summary>
    private static Extremes? ExtremesOf(PlacedComponent placed, Characteristic characteristic, EstimateBook book)
    {
        if (characteristic.Report is not (Statistic.MinAndMax or Statistic.Spread))
            return null;
        var (smallest, largest, spread) = (Read(Statistic.Min), Read(Statistic.Max), Read(Statistic.Spread));
        return smallest is not null && largest is not null && spread is not null ? new Extremes(smallest, largest, spread) : null;

        Quantity? Read(Statistic statistic) => book.Read(placed, characteristic, statistic).Value;
    }

    /// <summary>What a verdict calls a characteristic: <c>position/characteristic</c>, with <c>#2</c> for the second of several like parts.</summary>
    public static string SubjectOf(PlacedComponent placed, Characteristic characteristic)
    {
        var address = new Address(placed.Placement.Position, characteristic.Id).ToString();
        return placed.Placement.Index > 1 ? FormattableString.Invariant($"{address}#{placed.Placement.Index}") : address;
    }

    /// <summary>The limits that decide at an address: the shop's, else the position's, else the kind's; null when there are none.</summary>
    public static Limits? LimitsAt(Address at, UnitView view) =>
        view.Snapshot.Policy.Limits.FirstOrDefault(l => l.Subject == at.ToString())?.Limits ?? view.Family.ServiceLimitsAt(at);

    private static (Estimate Estimate, Assessment Assessment) Assess(
        string subject, PlacedComponent placed, Characteristic characteristic, Limits limits, EstimateBook book)
    {
        var policy = book.View.Snapshot.Policy.For(characteristic.Criticality);
        var estimate = book.Of(placed, characteristic);
        var readings = book.SetOf(placed, characteristic);
        var drawing = book.View.Family.NewLimitsAt(new Address(placed.Placement.Position, characteristic.Id));
        if (estimate.Basis == EstimateBasis.Derived)
            return (estimate, Derived(subject, estimate, limits, policy, book.TrialsOf(placed, characteristic)));
        if (estimate.Basis != EstimateBasis.Measured)
            return (estimate, InstrumentReasons.Noted(Conformance.NotRead(subject), subject, readings, limits, policy));
        var assessed = readings.Count < characteristic.MinimumReadings
            ? (estimate, ConformityReasons.TooFew(subject, readings.Count, characteristic.MinimumReadings))
            : characteristic.Report == Statistic.MinAndMax
                ? BothEnds(subject, placed, characteristic, limits, book, policy)
                : (estimate, Conformance.Assess(subject, estimate, limits, policy));
        return (assessed.Item1, WithWear(InstrumentReasons.Noted(assessed.Item2, subject, readings, limits, policy)));

        Assessment WithWear(Assessment assessment) =>
            WearUsed.Of(subject, assessed.Item1, drawing, limits, readings.Scale) is { } wear ? assessment with { Reasons = assessment.Reasons.Add(wear) } : assessment;
    }

    /// <summary>A value that follows from others. Where it was found by trials, they say how sure it is, and the answer says so.</summary>
    private static Assessment Derived(string subject, Estimate estimate, Limits limits, Policy policy, MonteCarloResult? trials)
    {
        var assessment = Conformance.Assess(subject, estimate, limits, policy, trials);
        return trials is null ? assessment : assessment with { Reasons = assessment.Reasons.Add(ConformityReasons.FoundByTrials(subject, trials.Trials)) };
    }

    /// <summary>Smallest and largest are each held against the limits, and the worse decides; both are said, with their spread.</summary>
    private static (Estimate Estimate, Assessment Assessment) BothEnds(
        string subject, PlacedComponent placed, Characteristic characteristic, Limits limits, EstimateBook book, Policy policy)
    {
        var ends = new[] { Statistic.Min, Statistic.Max }
            .Select(s => book.Read(placed, characteristic, s))
            .Select(e => (Estimate: e, Assessment: Conformance.Assess(subject, e, limits, policy)))
            .OrderByDescending(x => Outcomes.Rank(x.Assessment.Outcome))
            .ThenBy(x => x.Assessment.Margin)
            .ToArray();
        var (worse, better) = (ends[0], ends[1]);
        var changes = worse.Assessment.WouldChange
            .Select(c => c with { LeadsTo = Worse(c.LeadsTo, better.Assessment.Outcome) })
            .Where(c => c.Code == "read-it" || c.LeadsTo != worse.Assessment.Outcome);
        return (worse.Estimate, worse.Assessment with
        {
            Reasons = [.. worse.Assessment.Reasons, .. better.Assessment.Reasons, .. ConformityReasons.OfSpread(subject, worse.Estimate, better.Estimate, new Scale(characteristic.Dimension))],
            WouldChange = [.. changes],
        });
    }

    private static Outcome Worse(Outcome a, Outcome b) => Outcomes.Rank(a) >= Outcomes.Rank(b) ? a : b;
}
