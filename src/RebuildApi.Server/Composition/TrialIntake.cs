using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Composition;

/// <summary>Takes one trial assembly in: which clearance, exactly which parts and pieces, and the gap that was read.</summary>
public sealed class TrialIntake(BenchWork work, string pointer)
{
    /// <summary>The trial with its doubts, or null with complaints.</summary>
    public TrialTakenIn? Take(TrialRequest sent)
    {
        if (!work.Family.Loops.TryGetValue(sent.Clearance, out var loop))
        {
            work.Complaints.AddUnknown(pointer + "/clearance", FieldProblems.UnknownClearance, $"The family has no clearance {sent.Clearance}.", sent.Clearance, work.Family.Loops.Keys);
            return null;
        }

        var gap = sent.Readings.Select((r, i) => r.ToContract(Dimension.Length, $"{pointer}/readings/{i}", work.Complaints)).ToArray();
        var pieces = (sent.Pieces ?? []).Select((p, i) => Piece(p, loop, $"{pointer}/pieces/{i}")).ToArray();
        var taken = sent.Taken.ToContract(pointer, work.Now, work.KnowsInstrument, work.Complaints);
        var fitted = work.Complaints.Any ? [] : Fitted(sent, loop);
        if (work.Complaints.Any)
            return null;
        var trial = new TrialAssembly(
            sent.Id ?? work.Ids.Next(), loop.Id, fitted, [.. pieces.Select(p => p!)], sent.Load?.Si, [.. gap.Select(r => r!)], taken, sent.Supersedes);
        return new TrialTakenIn(trial, Plausibility.Check(trial, loop, taken.Instrument is { } id ? work.Session.Instrument(id)?.State : null));
    }

    private FittedPiece? Piece(PieceRequest sent, ClearanceLoop loop, string at)
    {
        var places = loop.Terms.Select(t => t.Of).OfType<OfSeries>().DistinctBy(s => s.Position).ToArray();
        var place = sent.Position is null && places.Length == 1 ? places[0] : places.FirstOrDefault(p => p.Position == sent.Position);
        if (place is null)
        {
            work.Complaints.AddUnknown(at + "/position", FieldProblems.UnknownPosition, "The place of the piece is not one of this clearance.", sent.Position ?? "", [.. places.Select(p => p.Position)]);
            return null;
        }

        var series = work.Family.Series[place.Series];
        if (sent.Series is { } said && said != series.Id)
        {
            work.Complaints.AddUnknown(at + "/series", FieldProblems.UnknownPiece, $"{place.Position} takes the series {series.Id}.", said, [series.Id]);
            return null;
        }

        if (series.Members.FirstOrDefault(m => m.Id == sent.Member) is { } member)
            return new FittedPiece(place.Position, series.Id, member.Id, sent.Thickness?.Length ?? member.Thickness);
        work.Complaints.AddUnknown(at + "/member", FieldProblems.UnknownPiece, $"The series {series.Id} has no {sent.Member}.", sent.Member, [.. series.Members.Select(m => m.Id)]);
        return null;
    }

    // A derived dimension stands on others, but of the same part: the positions of the terms are all that is fitted.
    private ImmutableArray<FittedPart> Fitted(TrialRequest sent, ClearanceLoop loop)
    {
        var said = (sent.Parts ?? []).ToDictionary(p => Place.Parse(p.Position), p => p.Component);
        var places = loop.Terms.Select(t => t.Of).OfType<OfPart>().Select(p => p.At.Position).Distinct(StringComparer.Ordinal)
            .SelectMany(p => Enumerable.Range(1, work.Family.Positions[p].Quantity).Select(i => new Place(p, i)))
            .ToArray();
        foreach (var stray in said.Keys.Except(places))
            work.Complaints.AddUnknown(pointer + "/parts", FieldProblems.UnknownPosition, $"{stray} is not part of this clearance.", stray.ToString(), [.. places.Select(p => p.ToString())]);
        return [.. places.Select(p => Part(p, said.GetValueOrDefault(p))).OfType<FittedPart>()];
    }

    private FittedPart? Part(Place place, string? said) =>
        work.Parts.Find(said is null ? place.ToString() : null, said, pointer + "/parts", "position") is { } part
            ? new FittedPart(place.Position, part.Id, part.Revision)
            : null;
}

/// <summary>A trial assembly that was taken in.</summary>
/// <param name="Trial">What will be stored.</param>
/// <param name="Doubts">What looks like a slip.</param>
public sealed record TrialTakenIn(TrialAssembly Trial, ImmutableArray<Doubt> Doubts);
