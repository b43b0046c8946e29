using Microsoft.Extensions.Options;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Attachments;

/// <summary>Takes files in: the file is on the disk before the record that names it is committed.</summary>
public sealed class AttachmentDesk(Bench bench, AttachmentFolder folder, IOptions<ServerOptions> options)
{
    /// <summary>Keeps one file of a unit, as it was sent.</summary>
    public async Task<StoredAnswer> Keep(string unit, FileBody body, AttachmentSaid said, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        var sort = SortOf(body);
        Check(said, file);
        var name = AttachmentFolder.NameOf(body.Content.Span);
        if (!body.Request.DryRun)
            await folder.Keep(body.Content, cancellation);
        return await bench.Store.Write(body.Request, session =>
        {
            RequireRoom(session, unit, body.Content.Length);
            if (!body.Request.DryRun)
                RequireFile(name);
            var kept = session.Put(
                new Attachment(
                    said.Id ?? bench.Ids.Next(), unit, name, sort.MediaType, body.Content.Length, said.Finding, said.Measurement, said.Note,
                    said.Person, bench.Time.GetUtcNow()), null);
            return Answer.Created($"/v1/units/{unit}/attachments/{kept.Id}", AttachmentWire.From(kept, folder));
        }, cancellation);
    }

    private static FileSort SortOf(FileBody body)
    {
        var sort = FileSort.Of(body.Content.Span);
        if (sort?.MediaType == body.MediaType)
            return sort;
        throw new ProblemException(Problems.InvalidContent, sort is null ? "The content is no picture and no PDF." : $"The content is {sort.MediaType}, not {body.MediaType}.",
            [new FieldError("header/Content-Type", FieldProblems.NotAllowed.Code, "The content is not what the header says.", body.MediaType, sort is null ? null : [sort.MediaType])]);
    }

    private static void Check(AttachmentSaid said, UnitFile file)
    {
        var complaints = new Complaints();
        if (said.Finding is { } finding && file.Findings.All(f => f.Id != finding))
            complaints.Add("query/finding", FieldProblems.UnknownRecord, $"The unit has no finding {finding}.", finding);
        if (said.Measurement is { } measurement && file.Measurements.All(m => m.Id != measurement))
            complaints.Add("query/measurement", FieldProblems.UnknownRecord, $"The unit has no measurement {measurement}.", measurement);
        complaints.ThrowIfAny(Problems.InvalidContent);
    }

    // The same bytes were erased elsewhere at this moment.
    private void RequireFile(string name)
    {
        if (!folder.Holds(name))
            throw new StorageUnavailableException("io-error", "The file was removed before its record was kept. Send it again.");
    }

    private void RequireRoom(IWriteSession session, string unit, long bytes)
    {
        var limit = options.Value.AttachmentBytesPerUnit;
        var taken = session.All<Attachment>(unit).Sum(a => a.Bytes);
        if (taken + bytes > limit)
            throw new ProblemException(Problems.BodyTooLarge, $"The unit's files come to {taken} bytes; with this one they would go beyond {limit}. Rebuild:AttachmentBytesPerUnit sets the limit.");
    }
}

/// <summary>What is said of a file.</summary>
/// <param name="Person">Who sends it.</param>
/// <param name="Note">What it shows.</param>
/// <param name="Finding">The finding that it shows.</param>
/// <param name="Measurement">The measurement that it shows.</param>
/// <param name="Id">An id of the client's own.</param>
public sealed record AttachmentSaid(string Person, string? Note, string? Finding, string? Measurement, string? Id);
