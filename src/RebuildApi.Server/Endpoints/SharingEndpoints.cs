using Microsoft.Extensions.Options;
using RebuildApi.Server.Access;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Sharing;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>What the shop opens to others that share its database.</summary>
public static class SharingEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapSharings(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("branches");
        group.List<ListOf<SharingWire>>("/sharings", List, "listSharings", "List what is opened to other shops", "To whom, what, who decided so and when; what was taken back stays listed with nothing opened.")
            .Needs(Scope.Administrator);
        group.Make("/sharings", Open, "openToShop", "Open something to another shop",
                "The other shop, a branch that shares the database, may read it from now on, whichever copy of the service it asks; it can never write. Replaces what was opened to it before. Customers' names and words, tokens and receivers are never opened.")
            .Needs(Scope.Administrator).Fails(Problems.InvalidContent)
            .Example("""{ "shop": "harbour", "opens": ["stock", "units"], "person": "Ada" }""");
        group.Make("/sharings/{shop}/revocations", TakeBack, "closeToShop", "Take back what is opened to a shop", "From now on it reads nothing here. Taking it back again changes nothing.")
            .Needs(Scope.Administrator).Fails(Problems.UnknownShop)
            .Example("""{ "person": "Ada" }""");
    }

    private static Listing<SharingWire, ListOf<SharingWire>> List(IStore store)
    {
        PageReader<Sharing> pages = (after, limit, stop) => store.Page<Sharing>(ShopFilter.Every, after, limit, stop);
        return new(pages.Select(SharingWire.From), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<CreatedAnswer<SharingWire>> Open(
        Body<SharingRequest> body, IOptions<ServerOptions> options, IStore store, TimeProvider time, CancellationToken cancellation)
    {
        var sent = body.Value;
        if (sent.Shop == options.Value.Shop)
            throw Own(sent.Shop);
        var sharing = new Sharing(sent.Shop, [.. sent.Opens.Distinct().Order()], sent.Person, time.GetUtcNow(), 0);
        var answer = await store.Write(body.Request, session => Answer.Created("/v1/sharings", SharingWire.From(session.Put(sharing, null))), cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<ChangedAnswer<SharingWire>> TakeBack(
        string shop, Body<SharingEndRequest> body, IStore store, TimeProvider time, CancellationToken cancellation)
    {
        var answer = await store.Write(body.Request, session =>
        {
            var found = session.Find<Sharing>(shop) ?? throw new ProblemException(Problems.UnknownShop, "Nothing was opened to a shop of this name.");
            var closed = found.Opens.IsEmpty ? found : session.Put(found with { Opens = [], Person = body.Value.Person, Time = time.GetUtcNow() }, found.Version);
            return Answer.Changed(SharingWire.From(closed));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static ProblemException Own(string shop) => new(Problems.InvalidContent, "This is the shop itself.",
        [new FieldError("/shop", FieldProblems.NotAllowed.Code, "This is the shop itself, which sees its own records anyway.", shop, null, "Name the other shop: its Rebuild:Shop.")]);
}
