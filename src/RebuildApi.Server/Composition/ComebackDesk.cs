using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>Records that a unit came back, with what the shop had on record of what it was laid to.</summary>
public sealed class ComebackDesk(Bench bench)
{
    /// <summary>Records one comeback.</summary>
    public async Task<StoredAnswer> Keep(string unit, Body<ComebackRequest> body, CancellationToken cancellation)
    {
        // What stood when it went out; where it was never handed over by its gate, the last that was kept.
        var judgement = (await bench.Store.LatestJudgement(unit, "hand-over", cancellation) ?? await bench.Store.LatestJudgement(unit, null, cancellation))?.Kept.Id;
        return await bench.Change(unit, body.Request, work => Keep(work, body.Value, judgement), cancellation);
    }

    private static StoredAnswer Keep(BenchWork work, ComebackRequest sent, string? judgement)
    {
        var at = (sent.Time ?? work.Now).ToUniversalTime();
        if (at > work.Now.AddDays(1))
            work.Complaints.Add("/time", FieldProblems.OutOfRange, "The time lies in the future.", at.ToString("O", CultureInfo.InvariantCulture));
        if (sent.ReturnedAs is { } returned && work.Session.Unit(returned) is null)
            work.Complaints.Add("/returnedAs", FieldProblems.UnknownRecord, $"There is no unit {returned}.", returned);
        var complaint = ComplaintCheck.Read(sent.Complaint, work.Family, work.Complaints);
        var confirmed = (sent.Confirmed ?? []).Select((c, i) => Confirmed(work, c, Pointer.Entry("/confirmed", i))).ToImmutableArray();
        work.StopIfWrong();
        var comeback = new Comeback(
            sent.Id ?? work.Ids.Next(), work.Unit, sent.ReturnedAs, at, complaint, sent.Words, confirmed, Basis(work, confirmed, at, judgement), sent.Person, sent.Supersedes);
        work.Session.Add(comeback);
        return Answer.Created($"/v1/units/{work.Unit}/comebacks", ComebackWire.From(comeback), Etags.Of(Etags.Unit, work.Version));
    }

    private static ConfirmedCause Confirmed(BenchWork work, ConfirmedCauseRequest sent, string pointer)
    {
        var family = work.Family.Family;
        if (!Exists(work, sent.Subject))
        {
            work.Complaints.AddUnknown(pointer + "/subject", FieldProblems.UnknownSubject, $"The family has no {sent.Subject}.", sent.Subject,
                [.. family.Positions.Select(p => p.Id), .. family.Loops.Select(l => l.Id), .. family.Pairings.Select(p => p.Id)]);
        }

        if (sent.Cause is { } cause && family.Causes.All(c => c.Id != cause))
            work.Complaints.AddUnknown(pointer + "/cause", FieldProblems.NotAllowed, $"The family has no cause {cause}.", cause, [.. family.Causes.Select(c => c.Id)]);
        return new ConfirmedCause(sent.Subject, sent.Cause, sent.Words);
    }

    private static bool Exists(BenchWork work, string subject)
    {
        var family = work.Family;
        return family.Positions.ContainsKey(Place.Parse(subject).Position) || family.Loops.ContainsKey(subject) || family.Pairings.ContainsKey(subject)
            || (Address.TryParse(subject) is { } at && family.CharacteristicAt(at with { Position = Place.Parse(at.Position).Position }) is not null);
    }

    private static ComebackBasis Basis(BenchWork work, ImmutableArray<ConfirmedCause> confirmed, DateTimeOffset at, string? judgement)
    {
        var subjects = confirmed.Select(c => c.Subject).ToHashSet(StringComparer.Ordinal);
        var addresses = subjects.Select(Address.TryParse).OfType<Address>()
            .Concat(subjects.Where(work.Family.Loops.ContainsKey).SelectMany(l => work.Family.Loops[l].Terms).Select(t => t.Of).OfType<OfPart>().Select(p => p.At))
            .ToHashSet();
        var measurements = work.File.Measurements
            .Where(m => m.Taken.At <= at && PositionsOf(work.File, m.Component).Any(p => subjects.Contains(p) || addresses.Contains(new Address(p, m.Characteristic))))
            .ToImmutableArray();
        var trials = work.File.Trials.Where(t => t.Taken.At <= at && subjects.Contains(t.Loop)).ToImmutableArray();
        var instruments = measurements.Select(m => m.Taken.Instrument).Concat(trials.Select(t => t.Taken.Instrument)).OfType<string>().Distinct().Order(StringComparer.Ordinal);
        return new ComebackBasis(
            work.File.Unit.Family, work.File.Policy.Policy.Version, judgement, [.. measurements.Select(m => m.Id)], [.. trials.Select(t => t.Id)], [.. instruments]);
    }

    private static IEnumerable<string> PositionsOf(UnitFile file, string component) =>
        file.Placements.Where(p => p.Component == component).Select(p => p.Position).Distinct(StringComparer.Ordinal);
}
