using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Selection;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Wire;

namespace RebuildApi.Families.Tests;

/// <summary>Questions to put to a family of which one number was changed. What a family says of itself is worked out once and held against what the changed one says.</summary>
internal sealed class NumberProbes
{
    private readonly ImmutableArray<Question> _parts, _clearances, _pairings, _pieces;
    private readonly Question _doubts, _sheet, _selection, _building;
    private readonly CutProbe _cuts;
    private readonly WorkProbe _work;
    private readonly Family _family;
    private readonly Dictionary<string, Question> _ofOne = new(StringComparer.Ordinal);

    public NumberProbes(Bench sound)
    {
        var family = _family = sound.Family;
        var units = ProbeUnits.Of(sound);
        _parts = OfUnits(family, units, book => Said.Of(PartJudge.JudgeAll(book)));
        _clearances = OfUnits(family, units, book => Said.Of(book.View.Family.Family.Loops.Select(l => ClearanceJudge.Judge(l, book))));
        _pairings = OfUnits(family, units, book => Said.Of(book.View.Family.Family.Pairings.Select(r => PairingJudge.Judge(r, book))));
        _doubts = new Question(family, new DoubtProbe(family).Ask);
        _cuts = new CutProbe(sound);
        _sheet = new Question(family, f => Said.Of(new Sheet(new FamilyIndex(f), Display.For(null)).Rows().Select(r => (r.Position, r.Id, r.Readings))));
        _building = new Question(family, f => Said.Of((FastenerWire.All(f, Display.For(null)), LubricantWire.All(f, Display.For(null)))));
        _work = new WorkProbe(sound, _cuts);
        _selection = new Question(family, f => Said.Of(UnitSelector.Solve(
            new EstimateBook(new UnitView(ProbeUnits.Emptied(sound).Snapshot, new FamilyIndex(f))), new SelectionRequest())));
        _pieces = OfUnits(family, ProbeUnits.WithEachPiece(sound), book => Said.Of(book.View.Family.Family.Loops.Select(l => ClearanceJudge.Judge(l, book))));
    }

    /// <summary>Whether any question that may touch on the number gets another answer.</summary>
    public bool Feel(ImmutableArray<object> path, Family changed) => Questions(path).Any(q => q.IsAnsweredOtherwise(changed));

    private IEnumerable<Question> Questions(ImmutableArray<object> path) => path[0] switch
    {
        "causes" => [OfOne(path, CauseProbe.OfCause)],
        "tests" => [OfOne(path, CauseProbe.OfTest)],
        "symptoms" => [OfOne(path, CauseProbe.OfSymptom)],
        "operations" => Worked(path, (string)path[^1] != "minutes"),
        "series" => [.. _clearances, .. _pieces],
        "kinds" when path[^1] is "minimumReadings" => [.. _parts, .. _pairings, _sheet],
        "positions" when path[^1] is "stripOrder" or "quantity" => [.. _parts, _sheet],
        "loops" or "materials" => [.. _clearances, .. _parts, _selection],
        "pairings" => _pairings,
        "fasteners" or "lubricants" => [_building],
        _ => path.Contains("toothSets") ? _pairings : [.. _parts, _doubts, .. _clearances, .. _pairings],
    };

    /// <summary>What a clearance advises to cut, and the work of a plan.</summary>
    private IEnumerable<Question> Worked(ImmutableArray<object> path, bool advised)
    {
        if (advised)
            yield return OfOne(path, (f, i) => _cuts.Ask(f, _family.Operations[i].Id), "cut");
        yield return OfOne(path, (f, i) => _work.Ask(f, _family.Operations[i].Id), "work");
    }

    private static ImmutableArray<Question> OfUnits(Family family, IEnumerable<Bench> units, Func<EstimateBook, string> say) =>
        [.. units.Select(bench => new Question(family, f => say(new EstimateBook(new UnitView(bench.Snapshot, new FamilyIndex(f))))))];

    /// <summary>A question about one entry of a section.</summary>
    private Question OfOne(ImmutableArray<object> path, Func<Family, int, string> ask, string about = "")
    {
        var entry = $"{path[0]}/{path[1]} {about}";
        return _ofOne.TryGetValue(entry, out var known) ? known : _ofOne[entry] = new Question(_family, f => ask(f, (int)path[1]));
    }

    /// <summary>A question and what the family as declared says to it.</summary>
    private sealed class Question(Family family, Func<Family, string> ask)
    {
        private readonly Lazy<string> _before = new(() => ask(family));

        /// <summary>A change that makes no family at all says nothing.</summary>
        public bool IsAnsweredOtherwise(Family changed)
        {
            try
            {
                return ask(changed) != _before.Value;
            }
            catch (ArgumentException)
            {
                return false;
            }
        }
    }
}
