using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Selection;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Endpoints;

/// <summary>Rings, shims, washers and cuts of a unit, all its coupled clearances at once.</summary>
public static class SelectionEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapSelections(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("answers");
        group.WorkOut("/units/{unit}/selections", Solve, "solveSelection", "Which rings, shims and cuts?",
                "Solves all coupled clearances at once: the proven best choice, the next best, or what is missed and what could be machined. Nothing is stored.")
            .Fails(Problems.UnknownUnit, Problems.RulesUnavailable, Problems.InvalidContent, Problems.NotComputable)
            .Example("""{ "cuts": "when-needed", "alternatives": 2 }""");
    }

    private static async Task<Found<UnitSelectionWire>> Solve(
        string unit, Body<SelectionAskRequest> body, Asked asked, Bench bench, Judging judging, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        var view = judging.View(file);
        var request = RequestOf(body.Value, view.Family);
        var found = Select(view, request);
        var (family, show) = (view.Family, asked.Show);
        return new(new UnitSelectionWire(
            unit,
            file.Unit.Version,
            Kebab.Of(found.Outcome),
            found.Best is { } best ? UnitSelectionSolutionWire.From(best, ChanceOf(found, 0), family, show) : null,
            [.. found.Alternatives.Select((a, i) => UnitSelectionSolutionWire.From(a, ChanceOf(found, i + 1), family, show))],
            [.. found.Cuts.Select(c => CutInstructionWire.From(c, family, show))],
            [.. found.Misses.Select(m => LoopMissWire.From(m, family, show))],
            [.. found.LeftOut.Select(l => new LoopLeftOutWire(l.Loop, [.. l.Reasons.Select(r => ReasonWire.From(r, family))]))],
            [.. found.Reasons.Select(r => ReasonWire.From(r, family))],
            RuleWire.From(family.IdentityOf("selection")),
            view.InputsSha256,
            Cautions.Of(family, show)));
    }

    private static double? ChanceOf(UnitSelection found, int index) => index < found.Chances.Length ? found.Chances[index] : null;

    // What is asked was held against the family before; what is refused here is a wanted gap outside its window.
    private static UnitSelection Select(UnitView view, SelectionRequest request)
    {
        try
        {
            return UnitSelector.Solve(new EstimateBook(view), request);
        }
        catch (ArgumentException refused)
        {
            throw new ProblemException(Problems.NotComputable, refused.Message.Split(" (Parameter", StringSplitOptions.None)[0]);
        }
    }

    private static void CheckSeries(OtherSeriesRequest sent, string pointer, FamilyIndex family, Complaints complaints)
    {
        var places = family.Family.Loops.SelectMany(l => l.Terms).Select(t => t.Of).OfType<OfSeries>().Select(s => s.Position).ToHashSet(StringComparer.Ordinal);
        if (!places.Contains(sent.Position))
            complaints.AddUnknown(pointer + "/position", FieldProblems.UnknownPosition, $"No piece is chosen at {sent.Position}.", sent.Position, places);
        if (!family.Series.ContainsKey(sent.Series))
            complaints.AddUnknown(pointer + "/series", FieldProblems.UnknownPiece, $"The family has no series {sent.Series}.", sent.Series, family.Series.Keys);
    }

    private static SelectionRequest RequestOf(SelectionAskRequest sent, FamilyIndex family)
    {
        var complaints = new Complaints();
        var named = (sent.Clearances ?? []).Select((c, i) => (Id: c, At: $"/clearances/{i}")).Concat((sent.Targets ?? []).Select((t, i) => (Id: t.Clearance, At: $"/targets/{i}/clearance")));
        foreach (var (id, at) in named.Where(n => !family.Loops.ContainsKey(n.Id)))
            complaints.AddUnknown(at, FieldProblems.UnknownClearance, $"The family has no clearance {id}.", id, family.Loops.Keys);
        var members = family.Family.Series.SelectMany(s => s.Members).Select(m => m.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var (shelf, i) in (sent.Available ?? []).Select((s, i) => (s, i)).Where(x => !members.Contains(x.s.Member)))
            complaints.AddUnknown($"/available/{i}/member", FieldProblems.UnknownPiece, $"No series has {shelf.Member}.", shelf.Member, members);
        for (var i = 0; i < (sent.Series ?? []).Length; i++)
            CheckSeries(sent.Series!.Value[i], $"/series/{i}", family, complaints);
        complaints.ThrowIfAny(Problems.InvalidContent);
        return new SelectionRequest
        {
            Loops = [.. (sent.Clearances ?? []).Distinct()],
            Cuts = sent.Cuts,
            Targets = (sent.Targets ?? []).DistinctBy(t => t.Clearance).ToImmutableDictionary(t => t.Clearance, t => t.Gap.Length),
            Series = (sent.Series ?? []).DistinctBy(s => s.Position).ToImmutableDictionary(s => s.Position, s => s.Series),
            Available = sent.Available?.GroupBy(s => s.Member).ToImmutableDictionary(g => g.Key, g => g.Sum(s => s.Count)),
            Alternatives = sent.Alternatives,
        };
    }
}
