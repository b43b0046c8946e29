using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Attachments;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>Photos and documents of a unit, of a finding or of a measurement.</summary>
public static class AttachmentEndpoints
{
    private static readonly QueryOption Person = new("person", "Who sends it.", Required: true);
    private static readonly QueryOption Note = new("note", "What it shows, in words.");
    private static readonly QueryOption Finding = new("finding", "Id of the finding that it shows.");
    private static readonly QueryOption Measurement = new("measurement", "Id of the measurement that it shows.");
    private static readonly QueryOption Id = new("id", "An id of the client's own, or none to be given one.");

    /// <summary>The routes.</summary>
    public static void MapAttachments(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("units");
        group.Make("/units/{unit}/attachments", Add, "addAttachment", "Add a photo or document",
                "The body is the file itself: JPEG, PNG, WebP, HEIC or PDF, known by its content. It is kept byte for byte beside the database under its hash, and the hash stands in the chain.")
            .WithMetadata(Person, Note, Finding, Measurement, Id).Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.DuplicateId);
        group.List<ListOf<AttachmentWire>>("/units/{unit}/attachments", List, "listAttachments", "List the photos and documents of a unit", "What they show, and whether the files are there.")
            .Fails(Problems.UnknownUnit);
        group.Read("/units/{unit}/attachments/{attachment}", Get, "getAttachment", "Fetch a photo or document",
                "The file as it was sent, checked against its hash. Pictures may be shown in place, anything else is saved.")
            .Tagged().Fails(Problems.UnknownUnit, Problems.UnknownAttachment, Problems.AttachmentLost, Problems.AttachmentErased)
            .Produces<byte[]>(200, FileSort.All[0].MediaType, [.. FileSort.All[1..].Select(s => s.MediaType)]);
    }

    private static async Task<CreatedAnswer<AttachmentWire>> Add(string unit, HttpContext http, FileBody body, AttachmentDesk desk, CancellationToken cancellation)
    {
        var said = new AttachmentSaid(
            Words(http, Person, 100) ?? throw QueryText.Wrong(Person.Name, FieldProblems.MissingField, "Somebody sends it.", null),
            Words(http, Note, 500), IdOf(http, Finding), IdOf(http, Measurement), IdOf(http, Id));
        return new(await desk.Keep(unit, body, said, cancellation), body.Request.DryRun);
    }

    private static async Task<Listing<AttachmentWire, ListOf<AttachmentWire>>> List(string unit, Bench bench, AttachmentFolder folder, CancellationToken cancellation)
    {
        await bench.File(unit, cancellation);
        PageReader<Attachment> pages = (after, limit, stop) => bench.Store.Page<Attachment>(new ShopFilter(unit), after, limit, stop);
        return new(pages.Select(a => AttachmentWire.From(a, folder)), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<IResult> Get(string unit, string attachment, Bench bench, AttachmentFolder folder, CancellationToken cancellation)
    {
        _ = await bench.Store.Unit(unit, cancellation) ?? throw Bench.Unknown();
        var kept = await bench.Store.Find<Attachment>(attachment, cancellation);
        if (kept?.Unit != unit)
            throw new ProblemException(Problems.UnknownAttachment, "The unit has no attachment of this id.");
        var content = folder.Read(kept.Sha256) ?? throw await Gone(kept, bench.Store, cancellation);
        var sort = FileSort.Named(kept.MediaType);
        return new FileAnswer(content, sort.MediaType, $"{kept.Id}.{sort.Suffix}", sort.IsShown, kept.Sha256);
    }

    private static async Task<ProblemException> Gone(Attachment kept, IStore store, CancellationToken cancellation) =>
        (await store.All<Erasure>(new ShopFilter(kept.Unit), cancellation)).LastOrDefault(e => e.Files.Contains(kept.Sha256)) is { } erasure
            ? new(Problems.AttachmentErased, $"It was erased by {erasure.Person}; the erasure is {erasure.Id}.")
            : new(Problems.AttachmentLost, $"The file {AttachmentFolder.Name}/{kept.Sha256} is missing or is not what was sent.");

    private static string? Words(HttpContext http, QueryOption option, int most)
    {
        var text = QueryText.Of(http, option.Name);
        var complaints = new Complaints();
        if (text is not null)
            new WordsAttribute(most).Check(text, "query/" + option.Name, complaints);
        complaints.ThrowIfAny(Problems.InvalidQuery);
        return text;
    }

    private static string? IdOf(HttpContext http, QueryOption option) => QueryText.Of(http, option.Name) is { } id
        ? IdAttribute.IsId(id) ? id : throw QueryText.Wrong(option.Name, FieldProblems.BadId, FieldProblems.BadId.Cause, id)
        : null;
}
