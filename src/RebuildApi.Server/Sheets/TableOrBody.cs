using System.Collections.Immutable;
using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Storage;

namespace RebuildApi.Server.Sheets;

/// <summary>A body that is JSON, or a filled-in sheet as CSV or as a workbook.</summary>
/// <param name="Value">What was sent.</param>
/// <param name="Pointers">A pointer to each entry, for complaints.</param>
/// <param name="Request">Who asks, for the store.</param>
/// <typeparam name="T">The request.</typeparam>
/// <typeparam name="TJson">Its JSON form.</typeparam>
public sealed record TableOrBody<T, TJson>(T Value, ImmutableArray<string> Pointers, WriteRequest Request) : IEndpointParameterMetadataProvider
    where T : IFromSheet<T, TJson>
{
    private const string Csv = "text/csv";

    /// <summary>Reads the body; called by the framework.</summary>
    public static async ValueTask<TableOrBody<T, TJson>?> BindAsync(HttpContext http, ParameterInfo parameter)
    {
        if (Is(http, Csv))
            return await FromTable(http, bytes => SheetCsv.Read(bytes, http.RequestAborted));
        if (Is(http, Workbook.MediaType))
            return await FromTable(http, bytes => Task.Run(() => SheetWorkbook.Read(bytes), http.RequestAborted));
        var body = (await Body<TJson>.BindAsync(http, parameter))!;
        var (value, pointers) = T.FromJson(body.Value);
        return new TableOrBody<T, TJson>(value, pointers, body.Request);
    }

    /// <summary>Tells the document what is taken.</summary>
    public static void PopulateMetadata(ParameterInfo parameter, EndpointBuilder builder) =>
        builder.Metadata.Add(new AcceptsMetadata(["application/json", Csv, Workbook.MediaType], typeof(TJson)));

    private static bool Is(HttpContext http, string type) => http.Request.ContentType?.StartsWith(type, StringComparison.OrdinalIgnoreCase) == true;

    private static async ValueTask<TableOrBody<T, TJson>> FromTable(HttpContext http, Func<ReadOnlyMemory<byte>, Task<ImmutableArray<SheetRow>>> read)
    {
        var bytes = await RequestBytes.Read(http);
        var rows = await read(bytes);
        var complaints = new Complaints();
        var (value, pointers) = T.FromSheet(rows, complaints);
        complaints.ThrowIfAny(Problems.InvalidBody);
        return new TableOrBody<T, TJson>(value, pointers, Writes.RequestOf(http, bytes.Span));
    }
}
