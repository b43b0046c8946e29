using System.Collections.Immutable;
using System.Text.Json;
using RebuildApi.Server.Json;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Results;

/// <summary>A list, in the form that its address asks for. Tables hold the whole list unless a limit is given; JSON comes in pages.</summary>
/// <typeparam name="TItem">One entry.</typeparam>
/// <typeparam name="TEnvelope">What the page is wrapped in.</typeparam>
/// <param name="pages">Reads a page of it.</param>
/// <param name="envelope">Wraps a page.</param>
/// <param name="etag">Its entity tag, if it has one.</param>
/// <param name="isSteady">Whether it depends on nothing but records, rules and the address.</param>
public sealed class Listing<TItem, TEnvelope>(
    PageReader<TItem> pages,
    Func<ImmutableArray<TItem>, string?, DateTimeOffset, TEnvelope> envelope,
    string? etag = null,
    bool isSteady = false) : ISteady
{
    private const int UsualPage = 100;
    private const int LargestPage = 500;

    /// <inheritdoc/>
    public string? Etag { get; } = isSteady ? etag : null;

    /// <inheritdoc/>
    public Task ExecuteAsync(HttpContext httpContext)
    {
        var form = httpContext.GetEndpoint()!.Metadata.GetRequiredMetadata<ListForm>();
        var after = Cursor.In(httpContext);
        var limit = QueryText.Count(httpContext, "limit", 0, LargestPage);
        if (form == ListForm.Json)
            return WritePage(httpContext, after, limit);
        var table = form == ListForm.Csv ? CsvTable<TItem>.Asked(httpContext) : null;
        return WriteAll(httpContext, form, table, after, limit);
    }

    private async Task WritePage(HttpContext http, string? after, int limit)
    {
        var size = limit == 0 ? UsualPage : limit;
        var page = await pages(after, size, http.RequestAborted);
        if (Conditional.Matches(http, etag))
            return;
        http.Begin();
        var next = page.Next is null ? null : NextAddress(http, page.Next);
        if (next is not null)
            http.Response.Headers.Link = $"<{next}>; rel=\"next\"";
        var now = http.RequestServices.GetRequiredService<TimeProvider>().GetUtcNow();
        http.Response.ContentType = "application/json; charset=utf-8";
        // What is at hand is written to its end: time that ran out in the middle would have the problem written behind half an answer.
        await JsonSerializer.SerializeAsync(http.Response.Body, envelope(page.Items, next, now), WireJson.Options, CancellationToken.None);
    }

    // The first page is read before anything is written, so that what can go wrong still becomes a problem and not a torn table.
    private async Task WriteAll(HttpContext http, ListForm form, CsvTable<TItem>? table, string? after, int limit)
    {
        var page = await pages(after, limit == 0 ? LargestPage : limit, http.RequestAborted);
        if (Conditional.Matches(http, etag))
            return;
        http.Begin();
        http.Response.ContentType = form.MediaType + (table is null ? "" : "; charset=utf-8; header=present");
        IRowWriter<TItem> rows = table is null ? new NdjsonRows<TItem>(http.Response.Body) : table.Rows(http.Response.Body);
        // From here on time that runs out cuts the table, which its missing last row tells; a problem is no row of it.
        await http.Response.StartAsync(http.RequestAborted);
        await rows.Begin(http.RequestAborted);
        var count = 0;
        while (true)
        {
            count += page.Items.Length;
            foreach (var item in page.Items)
                await rows.Write(item, http.RequestAborted);
            if (page.Next is null || limit != 0)
                break;
            page = await pages(page.Next, LargestPage, http.RequestAborted);
        }

        await rows.End(count, http.RequestAborted);
    }

    private static string NextAddress(HttpContext http, string after)
    {
        var query = http.Request.Query.Where(q => q.Key != "cursor").Append(new("cursor", Cursor.Of(after)));
        return $"{http.Request.Scheme}://{http.Request.Host}{http.Request.Path}{QueryString.Create(query)}";
    }
}

/// <summary>Writes the rows of a list and, last, how many there were, so that a list cut short is noticed.</summary>
public interface IRowWriter<in T>
{
    /// <summary>Writes what stands before the first row.</summary>
    Task Begin(CancellationToken cancellation);

    /// <summary>Writes one row.</summary>
    Task Write(T item, CancellationToken cancellation);

    /// <summary>Writes how many rows there were.</summary>
    Task End(int count, CancellationToken cancellation);
}
