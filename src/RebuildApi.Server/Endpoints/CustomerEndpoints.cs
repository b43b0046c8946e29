using Microsoft.Extensions.Options;
using RebuildApi.Server.Access;
using RebuildApi.Server.Composition.Customers;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Customers;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>What is on record of a customer, to be given to it on request, and to be looked at when it is old.</summary>
public static class CustomerEndpoints
{
    private static readonly QueryOption Due = new("due", "Only those whose records are older than Rebuild:KeepYears and should be looked at by a person.", "boolean");
    private static readonly QueryOption Customer = new("customer", "The name that units bear, letter for letter.", Required: true);

    /// <summary>The routes.</summary>
    public static void MapCustomers(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("customers");
        group.List<ListOf<CustomerWire>>("/customers", List, "listCustomers", "Of whom is something kept, and since when?",
                "Every name that a unit bears or once bore. How long records must be kept, and when they must go, the law of the place says; this only counts the years. Nothing is removed by itself.")
            .Needs(Scope.Office).Takes(Due);
        group.Read("/customers/export", Export, "exportCustomer", "Everything of one customer",
                "Each unit with every reading, finding, decision, judgement, plan, quote, approval, invoice line and comeback, superseded or not, and attachments by their hash; with where the hash chain stood.")
            .Needs(Scope.Office).WithMetadata(Customer).Produces<CustomerExportWire>(200, "application/json").Fails(Problems.UnknownCustomer).DisableRequestTimeout();
        group.Make("/customers/erasures", Erase, "eraseCustomer", "Erase what names a customer",
                "Erases name, words and agreements of a customer from its units, their histories and exports and the answers kept for repeated requests, for good. The chain stays whole and says that it was done. A dry run lists what would go. Units in the shop and, unless asked otherwise, invoiced ones are left alone; copies made before still hold it and are listed.")
            .Needs(Scope.Administrator).Fails(Problems.UnknownCustomer)
            .Example("""{ "customer": "Ferry Lane Farm", "person": "Ada", "invoiced": "keep", "files": true }""");
    }

    private static async Task<CreatedAnswer<ErasureWire>> Erase(Body<ErasureRequest> body, ErasureDesk desk, CancellationToken cancellation) =>
        new(await desk.Run(body.Request, body.Value, cancellation), body.Request.DryRun);

    private static async Task<Listing<CustomerWire, ListOf<CustomerWire>>> List(
        HttpContext http, IStore store, IOptions<ServerOptions> options, TimeProvider time, CancellationToken cancellation)
    {
        var now = time.GetUtcNow();
        var onlyDue = QueryText.Flag(http, Due.Name);
        var customers = (await store.Customers(cancellation)).Select(c => CustomerWire.From(c, options.Value.KeepYears, now)).Where(c => c.Due || !onlyDue);
        return new(PagesOf.Whole([.. customers], c => c.Customer), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<IResult> Export(HttpContext http, IStore store, TimeProvider time, CancellationToken cancellation)
    {
        var customer = QueryText.Of(http, Customer.Name)!;
        var units = await store.UnitsOfCustomer(customer, cancellation);
        return units.IsEmpty
            ? throw new ProblemException(Problems.UnknownCustomer, "No unit bears this name, or ever did.")
            : new CustomerExport(store, customer, units, time.GetUtcNow());
    }
}
