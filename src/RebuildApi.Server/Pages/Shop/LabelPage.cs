using RebuildApi.Server.Composition.Labels;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>Labels to print: one, or those of a unit and its parts.</summary>
public static class LabelPage
{
    /// <summary>Serves the pages.</summary>
    public static void MapLabelPage(this IEndpointRouteBuilder routes)
    {
        routes.MapPage("/labels/{label}", One);
        routes.MapPage("/units/{unit}/labels", OfUnit);
    }

    private static async Task<IResult> One(string label, LabelDesk desk, IStore store, PageWords w, CancellationToken cancellation)
    {
        var found = await desk.Find(label, cancellation);
        return Shown([found], [await Words(found, store, cancellation)], w);
    }

    private static async Task<IResult> OfUnit(string unit, Composition.Bench bench, PageWords w, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        var labels = (await bench.Store.All<PartLabel>(new ShopFilter(unit), cancellation)).ToList();
        foreach (var component in file.Components.Select(c => c.Id).Distinct(StringComparer.Ordinal))
            labels.AddRange(await bench.Store.All<PartLabel>(new ShopFilter(null, component), cancellation));
        var words = new List<string>();
        foreach (var label in labels)
            words.Add(await Words(label, bench.Store, cancellation));
        return Shown(labels, words, w);
    }

    /// <summary>What stands under the code: the tag of a unit, the kind of a part.</summary>
    public static async ValueTask<string> Words(PartLabel label, IStore store, CancellationToken cancellation) => label.Unit is { } unit
        ? (await store.Unit(unit, cancellation))?.Tag ?? unit
        : (await store.Part(label.Component!, cancellation))?.Revisions.LastOrDefault()?.Component.Kind ?? label.Component!;

    private static Frame Shown(List<PartLabel> labels, List<string> words, PageWords w)
    {
        var drawings = labels.Zip(words, (l, text) => $"<li class=\"card\">{new LabelDrawing(l.Code, text).Document()}</li>");
        return new Frame(w, w["label.title"], "shop", labels.Count == 0 ? $"<p>{Page.Safe(w["label.none"])}</p>" : $"<ul class=\"cards\">{string.Concat(drawings)}</ul>");
    }
}
