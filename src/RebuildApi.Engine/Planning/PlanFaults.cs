using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Planning;

/// <summary>
/// What does not stand in a plan. Rules whose tables said it already are not judged again, and what was judged is remembered by the parts that it looks at:
/// two plans that differ in one place cost one place's judging.
/// </summary>
internal sealed class PlanFaults
{
    private readonly PlanModel _model;
    private readonly ImmutableArray<Check> _checks;
    private readonly Dictionary<(string Demand, string Parts), bool> _known = [];

    public PlanFaults(PlanModel model)
    {
        _model = model;
        var family = model.Book.View.Family.Family;
        var tabulated = model.Tables.Select(t => t.Demand).ToHashSet(StringComparer.Ordinal);
        _checks =
        [
            .. family.Loops.Select(l => Of(l)),
            .. family.Pairings.Select(r => Of(model.Demands.Pairing(r.Id, r.Name.In("en")), p => r.Touches(p, family), b => PairingJudge.Outcome(r, b) == Compatibility.Incompatible, tabulated)),
            .. family.Hooks.Select(h => Of(
                model.Demands.Pairing(h.Id, h.Id), h.Positions.Contains, b => model.Hooks.Run(h, b.View.Snapshot).Any(v => v.Outcome == Compatibility.Incompatible), tabulated)),
        ];
    }

    /// <summary>The faults of one plan.</summary>
    public ImmutableArray<PlanFault> Of(ImmutableArray<int> picks)
    {
        var book = new Lazy<EstimateBook>(() => new EstimateBook(new UnitView(_model.SnapshotOf(picks), _model.Book.View.Family, string.Empty)));
        return [.. _checks.Where(c => Fails(c, picks, book)).Select(c => new PlanFault(c.Demand, c.Blamed))];
    }

    private bool Fails(Check check, ImmutableArray<int> picks, Lazy<EstimateBook> book)
    {
        var fits = check.Read.Select(p => _model.Places[p].Fits[picks[p]]).ToArray();
        if (check.IsTabulated && fits.All(f => f.JudgedAs is null))
            return false;
        var key = (check.Demand, string.Join('|', fits.Select(f => f.Id)));
        return _known.TryGetValue(key, out var fails) ? fails : _known[key] = check.Fails(book.Value);
    }

    private Check Of(ClearanceLoop loop)
    {
        var positions = loop.Terms.Select(t => t.Of).Select(d => d is OfSeries s ? s.Position : (d as OfPart)?.At.Position).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return new Check(
            _model.Demands.Clearance(loop.Id, loop.Name.In("en")), false, PlacesOf(Reading.Of(positions, _model.Book.View.Family).Contains),
            [.. PlacesOf(positions.Contains).Where(p => _model.Places[p].Index == 1)], b => Fails(ClearanceJudge.JudgeGap(loop, b)));
    }

    private Check Of(string demand, Func<string, bool> touches, Func<EstimateBook, bool> fails, HashSet<string> tabulated)
    {
        var blamed = PlacesOf(touches);
        var read = PlacesOf(Reading.Of(blamed.Select(p => _model.Places[p].Position.Id), _model.Book.View.Family).Contains);
        return new Check(demand, tabulated.Contains(demand), read, blamed, fails);
    }

    private ImmutableArray<int> PlacesOf(Func<string, bool> isIn) =>
        [.. Enumerable.Range(0, _model.Places.Length).Where(i => isIn(_model.Places[i].Position.Id))];

    private static bool Fails(ClearanceAnswer clearance) => clearance.Verdict.Outcome switch
    {
        Outcome.Conforming => false,
        Outcome.Nonconforming => true,
        _ => !IsToBeRead(clearance),
    };

    /// <summary>Whether something in a clearance stands on a drawing or is not known, so that the piece is chosen again when it is read.</summary>
    private static bool IsToBeRead(ClearanceAnswer clearance) =>
        clearance.Alarm is not null || clearance.Terms.Any(t => t.IsUnknown || (t.Estimate.Basis == EstimateBasis.Drawing && t.Term.Of is OfPart));

    private sealed record Check(string Demand, bool IsTabulated, ImmutableArray<int> Read, ImmutableArray<int> Blamed, Func<EstimateBook, bool> Fails);
}
