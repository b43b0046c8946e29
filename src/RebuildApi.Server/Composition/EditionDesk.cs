using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>
/// Moves a unit to the edition of its family's rules that is loaded now: a decision that a person signs, kept with the judgement under the new rules. What changes
/// is worked out before the change begins; should someone write in between, it is worked out again.
/// </summary>
public sealed class EditionDesk(Bench bench, FamilyBook families, Judging judging, Rejudging rejudging)
{
    private const int Tries = 5;

    /// <summary>Moves one unit.</summary>
    /// <exception cref="ProblemException">There is no such unit or family, or the unit is at that edition already.</exception>
    public async Task<StoredAnswer> Move(string unit, Body<EditionMoveRequest> body, CancellationToken cancellation)
    {
        for (var i = 1; ; i++)
        {
            var file = await bench.File(unit, cancellation);
            var loaded = families.Require(file.Unit.Family.Id);
            // Refused by the writer, which knows a request that is repeated: the first one moved the unit.
            if (loaded.Family.Version == file.Unit.Family)
                return await bench.Store.Write(body.Request, _ => throw AlreadyThere(file.Unit), cancellation);
            var changes = await rejudging.Unit(file, loaded, cancellation);
            var judged = judging.Judge(file with { Unit = file.Unit with { Family = loaded.Family.Version } });
            try
            {
                return await bench.Store.Write(body.Request, session => Keep(session, body.Value, file.Unit, judged, changes), cancellation);
            }
            catch (VersionConflictException) when (i < Tries)
            {
                // Someone wrote between judging and moving: judge again what now stands.
            }
        }
    }

    private StoredAnswer Keep(IWriteSession session, EditionMoveRequest sent, Unit before, Judged judged, RejudgedUnit changes)
    {
        var to = judged.Family.Family.Version;
        session.Change(before with { Family = to }, before.Version);
        var decision = new Decision(
            bench.Ids.Next(), to.Id, "move-edition", $"From {before.Family.SemVer} to {to.SemVer}: {sent.Reason}", sent.Person, sent.Bench, bench.Time.GetUtcNow(), "",
            judged.View.InputsSha256, null);
        session.Add(before.Id, decision);
        session.Keep(judged, "edition-move");
        var moved = session.Unit(before.Id)!;
        return Answer.Created(
            $"/v1/units/{before.Id}/decisions",
            new EditionMoveWire(
                UnitWire.From(moved), FamilyEditionWire.From(before.Family), FamilyEditionWire.From(to), decision.Id, changes.Basis, [.. changes.Changes.Select(c => c.Wire())]),
            Etags.Of(Etags.Unit, moved.Version));
    }

    private static ProblemException AlreadyThere(Unit unit)
    {
        var words = $"The unit is pinned to {unit.Family.Id} {unit.Family.SemVer}, and that is the edition that is loaded.";
        return new ProblemException(Problems.InvalidContent, words, [new FieldError("path/unit", FieldProblems.NotAllowed.Code, words, unit.Family.SemVer, null)]);
    }
}
