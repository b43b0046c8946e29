using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>May any parts run together, whether the shop has them or not.</summary>
public static class LoosePairingEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapLoosePairings(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("answers");
        group.WorkOut("/pairings", Judge, "judgePairings", "May these parts run together?",
                "Judges the pairings of parts that are only spoken of: before buying one, or to see what a mix of vintages would do. Nothing is stored.")
            .Fails(Problems.InvalidContent)
            .Example("""
                { "family": "brackenmere-4", "parts": [
                  { "position": "third-gear", "attributes": { "dog.form": "back-tapered" } }, { "position": "sleeve-3-4", "attributes": { "form": "straight" } }] }
                """);
    }

    private static async Task<Found<LoosePairingsWire>> Judge(
        Body<LoosePairingsRequest> body, Asked asked, FamilyBook families, IStore store, CancellationToken cancellation)
    {
        var complaints = new Complaints();
        var family = families.Find(body.Value.Family);
        if (family is null)
        {
            complaints.AddUnknown(
                "/family", Problems.UnknownFamily, $"There is no family {body.Value.Family}.", body.Value.Family, [.. families.All.Select(f => f.Family.Version.Id)]);
        }

        complaints.ThrowIfAny(Problems.InvalidContent);
        var snapshot = new LooseParts(family!, (await store.Policy(cancellation)).Policy, complaints).Of(body.Value.Parts);
        complaints.ThrowIfAny(Problems.InvalidContent);
        return new(Answer(new UnitView(snapshot, family!), asked.Show, await store.Prices(family!, cancellation)));
    }

    private static LoosePairingsWire Answer(UnitView view, Display show, KindPrices prices)
    {
        var book = new EstimateBook(view);
        var decisions = new DecisionsBeside([], view.InputsSha256);
        var positions = view.Snapshot.Placements.Select(p => p.Position).ToHashSet(StringComparer.Ordinal);
        var rules = view.Family.Family.Pairings.Where(r => r.Roles.Values.Any(role => positions.Contains(role.Split('/', '#')[0])));
        return new(
            [.. rules.Select(r => PairingVerdictWire.From(PairingJudge.Judge(r, book), view.Family, decisions, show, prices))],
            RuleWire.From(view.Family.IdentityOf("pairings")),
            view.InputsSha256,
            Cautions.Of(view.Family, show));
    }
}
