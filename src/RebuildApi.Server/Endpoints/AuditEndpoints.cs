using System.Globalization;
using RebuildApi.Server.Access;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>The hash chain of everything that was recorded: who did what and when, and whether it still stands as it was written.</summary>
public static class AuditEndpoints
{
    private const int LargestPage = 500;

    private static readonly QueryOption Kind = new("kind", "Only entries of this kind: measurement, approval, plugin-approval, settings and so on.");
    private static readonly QueryOption Unit = new("unit", "Only what belongs to this unit.");
    private static readonly QueryOption Head = new("head", "A head that was noted earlier, 64 hex digits: says whether the chain still holds it.");

    /// <summary>The routes.</summary>
    public static void MapAudit(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("audit");
        group.List<ListOf<AuditEntryWire>>("/audit", List, "listAudit", "Who did what, and when",
                "Every entry of the hash chain in the order in which it was committed, never edited. Keep the cursor of the last entry read and send it next time: each comes once.")
            .Takes(Kind).Takes(Unit);
        group.Read("/audit/{sequence}", Get, "getAuditEntry", "Get an entry with what was recorded",
                "One entry with every field that its hash is made of, so that anybody can work the hash out again.")
            .Needs(Scope.Office).Fails(Problems.UnknownEntry);
        group.Read("/audit/verification", Verify, "verifyAudit", "Does the record still stand as it was written?",
                "Walks the whole chain, works out every hash again, holds the tables against it, and names the first broken entry and why. Note the head outside from time to time.")
            .WithMetadata(Head).DisableRequestTimeout();
    }

    private static Listing<AuditEntryWire, ListOf<AuditEntryWire>> List(HttpContext http, IStore store)
    {
        var wanted = new AuditFilter(QueryText.Of(http, Kind.Name), QueryText.Of(http, Unit.Name));
        PageReader<AuditEntryWire> pages = async (after, limit, cancellation) =>
        {
            var most = Math.Min(limit, LargestPage);
            var found = await store.Audit(wanted, Sequence(after), most + 1, cancellation);
            var page = found.Length > most ? found[..most] : found;
            var next = found.Length > most ? page[^1].Event.Sequence.ToString(CultureInfo.InvariantCulture) : null;
            return new Page<AuditEntryWire>([.. page.Select(AuditEntryWire.From)], next);
        };
        return new(pages, (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<Found<AuditRecordWire>> Get(string sequence, IStore store, CancellationToken cancellation) =>
        long.TryParse(sequence, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && await store.AuditRecord(number, cancellation) is { } record
            ? new(AuditRecordWire.From(record))
            : throw new ProblemException(Problems.UnknownEntry, "The chain has no entry of this number.");

    // Walking waits for no writer, but works a while: not on the thread that answers.
    private static async Task<Found<VerificationWire>> Verify(HttpContext http, IStore store, CancellationToken cancellation)
    {
        var head = HeadAsked(http);
        var report = await Task.Run(async () => await store.VerifyChain(new ChainQuestion(head), cancellation), cancellation);
        return new(VerificationWire.From(report, head));
    }

    private static string? HeadAsked(HttpContext http)
    {
        var head = QueryText.Of(http, Head.Name)?.ToLowerInvariant();
        return head is null || (head.Length == 64 && head.All(char.IsAsciiHexDigit))
            ? head
            : throw QueryText.Wrong(Head.Name, FieldProblems.BadText, "A head is 64 hex digits.", head);
    }

    private static long Sequence(string? after) =>
        after is null ? 0 : long.TryParse(after, NumberStyles.None, CultureInfo.InvariantCulture, out var sequence) ? sequence : throw Cursor.Bad(after);
}
