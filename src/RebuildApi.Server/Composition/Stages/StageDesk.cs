using System.Collections.Immutable;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire.Stages;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>
/// Lets a unit from stage to stage. It is judged before the change begins, since judging is too slow for the one writer; should someone write in
/// between, it is judged again.
/// </summary>
public sealed class StageDesk(Bench bench, Judging judging)
{
    private const int Tries = 5;

    /// <summary>Records one step.</summary>
    public async Task<StoredAnswer> Go(string unit, Body<StageRequest> body, CancellationToken cancellation)
    {
        for (var i = 1; ; i++)
        {
            var file = await bench.File(unit, cancellation);
            var judged = IsForward(file.Unit.Stage, body.Value.To) || judging.WhyNot(file) is null ? judging.Judge(file) : null;
            try
            {
                return await bench.Store.Write(body.Request, session => Step(session, file, judged, body.Value), cancellation);
            }
            catch (VersionConflictException) when (i < Tries)
            {
                // Someone wrote between judging and passing: judge again what now stands.
            }
        }
    }

    private StoredAnswer Step(IWriteSession session, UnitFile seen, Judged? judged, StageRequest sent)
    {
        var now = session.Unit(seen.Unit.Id)!;
        if (now.Version != seen.Unit.Version)
            throw new VersionConflictException("unit", now.Id, seen.Unit.Version, now.Version);
        RequireWay(now.Stage, sent);
        var gate = IsForward(now.Stage, sent.To) ? GateKeeping.Pass(Gates.Hold(GateFacts.Of(session, judged!)), sent) : [];
        var kept = judged is null ? null : session.Keep(judged, sent.To == UnitStages.HandedOver ? "hand-over" : "gate");
        var passing = session.Put(
            new StagePassing(sent.Id ?? bench.Ids.Next(), now.Id, now.Stage, sent.To, sent.Person, bench.Time.GetUtcNow(), sent.Note, kept, gate), null);
        var changed = session.Change(now with { Stage = sent.To }, null);
        return Answer.Created($"/v1/units/{now.Id}/stages", PassingWire.Of(passing), Etags.Of(Etags.Unit, changed.Version));
    }

    private static bool IsForward(string from, string to) => UnitStages.After(from) == to;

    /// <summary>One gate at a time forward; back to any earlier stage and away unrepaired with a reason.</summary>
    private static void RequireWay(string from, StageRequest sent)
    {
        if (sent.To == from)
            throw new ProblemException(Problems.StageConflict, $"The unit is at {from} already.", [Field("/to", "It is there already.", sent.To, Open(from))]);
        if (IsForward(from, sent.To))
            return;
        if (!Open(from).Contains(sent.To))
            throw new ProblemException(Problems.StageConflict, $"From {from} the unit can't go to {sent.To}.", [Field("/to", "One gate after the other.", sent.To, Open(from))]);
        if (sent.Note is null)
            throw new ProblemException(Problems.InvalidContent, "A unit that goes back or away unrepaired needs a reason.",
                [new FieldError("/note", FieldProblems.MissingField.Code, "The reason is missing.", null, null, "Say why in note.")]);
    }

    /// <summary>Where a unit may go from a stage.</summary>
    internal static ImmutableArray<string> Open(string from) =>
    [
        .. UnitStages.Way.Where(s => UnitStages.IsBefore(s, from) || from == UnitStages.Returned && s != UnitStages.HandedOver),
        .. UnitStages.After(from) is { } next ? [next] : ImmutableArray<string>.Empty,
        .. UnitStages.IsGone(from) ? ImmutableArray<string>.Empty : [UnitStages.Returned],
    ];

    private static FieldError Field(string pointer, string message, string got, ImmutableArray<string> allowed) =>
        new(pointer, FieldProblems.NotAllowed.Code, message, got, allowed);
}
