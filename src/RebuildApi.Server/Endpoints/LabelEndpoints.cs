using RebuildApi.Server.Composition.Labels;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Pages;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Parts;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>Short codes on units and parts.</summary>
public static class LabelEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapLabels(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("labels");
        group.Make("/labels", Give, "giveLabel", "Give a unit or a part its code", "A letter for the sort, a running number, a check letter. What has a code already keeps it.")
            .Fails(Problems.InvalidContent)
            .Example("""{ "unit": "u1" }""");
        group.List<ListOf<LabelWire>>("/labels", List, "listLabels", "List the codes given out", "In the order of the codes.");
        group.Read("/labels/{label}", Get, "getLabel", "What bears this code?",
                "Finds a unit or part by what was scanned or typed; blanks, hyphens and case do not matter. A wrong character or two that changed places are told by the check letter.")
            .Fails(Problems.UnknownLabel, Problems.MistypedLabel);
        group.Read("/labels/{label}.svg", Draw, "drawLabel", "Draw a label", "The label with its QR code, about 50 mm across.")
            .Fails(Problems.UnknownLabel, Problems.MistypedLabel).Produces<string>(200, "image/svg+xml");
    }

    private static async Task<CreatedAnswer<LabelWire>> Give(Body<LabelRequest> body, LabelDesk desk, CancellationToken cancellation) =>
        new(await desk.Give(body, cancellation), body.Request.DryRun);

    private static Listing<LabelWire, ListOf<LabelWire>> List(IStore store)
    {
        PageReader<PartLabel> pages = (after, limit, stop) => store.Page<PartLabel>(ShopFilter.Every, after, limit, stop);
        return new(pages.Select(LabelWire.From), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<Found<LabelWire>> Get(string label, LabelDesk desk, CancellationToken cancellation) => new(LabelWire.From(await desk.Find(label, cancellation)));

    private static async Task<IResult> Draw(string label, LabelDesk desk, IStore store, CancellationToken cancellation)
    {
        var found = await desk.Find(label, cancellation);
        return TypedResults.Text(new LabelDrawing(found.Code, await LabelPage.Words(found, store, cancellation)).Document(), "image/svg+xml", System.Text.Encoding.UTF8);
    }
}
