using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Pairings;

/// <summary>
/// Which of many parts would run with what is chosen already. Every rule that the position takes part in is judged, so that a sleeve is held
/// against all the gears it serves at once.
/// </summary>
public static class CompatibilitySearch
{
    /// <summary>Judges candidates for a position.</summary>
    /// <param name="position">The position; its other parts stay as they are.</param>
    /// <param name="candidates">Parts of any kind; those of another kind than the position's are passed over.</param>
    /// <param name="book">What is known of the unit.</param>
    /// <param name="index">Which of several like parts would be exchanged.</param>
    /// <returns>Best first: by outcome, then by how many pairings are compatible, then by id. Empty when the family has no such position.</returns>
    public static ImmutableArray<CandidateVerdict> For(string position, IEnumerable<Candidate> candidates, EstimateBook book, int index = 1)
    {
        var kind = book.View.Family.KindAt(position)?.Id;
        var rules = book.View.Family.PairingsAt(position).ToArray();
        return
        [
            .. candidates
                .Where(c => c.Component.Kind == kind)
                .Select(c => Judge(c, position, index, rules, book))
                .OrderBy(v => Assessment.Rank(v.Outcome))
                .ThenByDescending(v => v.Pairings.Count(p => p.Outcome == Compatibility.Compatible))
                .ThenBy(v => v.Component.Id, StringComparer.Ordinal),
        ];
    }

    /// <summary>The snapshot with a candidate chosen for a position.</summary>
    public static UnitSnapshot Fit(Candidate candidate, string position, int index, UnitSnapshot snapshot)
    {
        var replaced = snapshot.Placements.Where(p => p.Position == position && p.Index == index).ToArray();
        var facing = replaced.MaxBy(p => p.Role)?.Facing ?? Facing.Unspecified;
        return snapshot with
        {
            Components = [.. snapshot.Components.Where(c => c.Id != candidate.Component.Id), candidate.Component],
            Placements =
            [
                .. snapshot.Placements.Except(replaced),
                .. replaced.Where(p => p.Role == PlacementRole.Found),
                new Placement(position, index, candidate.Component.Id, PlacementRole.Fitted, facing, null),
            ],
            Measurements = [.. snapshot.Measurements, .. candidate.Measurements.ExceptBy(snapshot.Measurements.Select(m => m.Id), m => m.Id)],
            Findings = [.. snapshot.Findings, .. candidate.Findings.ExceptBy(snapshot.Findings.Select(f => f.Id), f => f.Id)],
            Instruments = [.. snapshot.Instruments, .. candidate.Instruments.ExceptBy(snapshot.Instruments.Select(i => i.Id), i => i.Id)],
        };
    }

    private static CandidateVerdict Judge(Candidate candidate, string position, int index, PairingRule[] rules, EstimateBook book)
    {
        var after = After(candidate, position, index, book);
        var pairings = rules.Select(r => PairingJudge.JudgeWithoutCures(r, after)).ToImmutableArray();
        return new CandidateVerdict(
            candidate.Component,
            pairings.IsEmpty ? Compatibility.NotAssessed : pairings.Select(p => p.Outcome).MaxBy(Assessment.Rank),
            pairings,
            [.. pairings.SelectMany(p => p.Settles).Distinct()]);
    }

    /// <summary>
    /// What is known of the unit with a candidate in. The verdicts carry the hash of the unit as it is: a hash for each candidate would cost more
    /// than judging it. An instrument that only the candidate brings could speak for other readings too: then nothing is taken over.
    /// </summary>
    private static EstimateBook After(Candidate candidate, string position, int index, EstimateBook book)
    {
        var snapshot = Fit(candidate, position, index, book.View.Snapshot);
        var positions = snapshot.Placements.Where(p => p.Component == candidate.Component.Id).Select(p => p.Position).Append(position);
        return snapshot.Instruments.Length > book.View.Snapshot.Instruments.Length
            ? new EstimateBook(new UnitView(snapshot, book.View.Family, book.View.InputsSha256))
            : book.WithExchanged(snapshot, positions.ToHashSet(StringComparer.Ordinal));
    }
}
