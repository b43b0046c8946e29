using System.Collections.Immutable;
using System.Reflection;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.Metadata;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests.Shapes;
using RebuildApi.Storage;
using Sylvan.Data.Csv;

namespace RebuildApi.Server.Requests.Tables;

/// <summary>A list to be taken over: JSON with rows, or a table as CSV, which is read row by row as it comes in.</summary>
/// <param name="Rows">The rows, each with what is wrong with it.</param>
/// <param name="SkipsBad">Whether rows with faults are left out rather than the whole list refused.</param>
/// <param name="Request">Who asks, for the store.</param>
/// <typeparam name="TList">The JSON form.</typeparam>
/// <typeparam name="TRow">One row.</typeparam>
public sealed record ListBody<TList, TRow>(ImmutableArray<SentRow<TRow>> Rows, bool SkipsBad, WriteRequest Request) : IEndpointParameterMetadataProvider
    where TList : class, IRows<TRow>
    where TRow : class
{
    private const int MostRows = 20_000;
    private const string EndMark = "#end";

    /// <summary>Reads the body; called by the framework.</summary>
    public static async ValueTask<ListBody<TList, TRow>?> BindAsync(HttpContext http, ParameterInfo parameter)
    {
        var skips = QueryText.Word(http, BadRows.Name, BadRows.Refuse, BadRows.Skip) == BadRows.Skip;
        if (http.Request.ContentType?.StartsWith("text/csv", StringComparison.OrdinalIgnoreCase) == true)
            return await FromTable(http, skips);
        var body = (await Body<TList>.BindAsync(http, parameter))!;
        return new(
            [.. body.Value.Rows.Select((row, i) => new SentRow<TRow>(row, at => Pointer.Entry("/rows", i) + at, new Complaints()))], skips, body.Request);
    }

    /// <summary>Tells the document what is taken.</summary>
    public static void PopulateMetadata(ParameterInfo parameter, EndpointBuilder builder) =>
        builder.Metadata.Add(new AcceptsMetadata(["application/json", "text/csv"], typeof(TList)));

    private static async Task<ListBody<TList, TRow>> FromTable(HttpContext http, bool skips)
    {
        var limit = http.GetEndpoint()?.Metadata.GetMetadata<BodyLimit>()?.Bytes ?? RequestBytes.UsualLimit;
        if (http.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } feature)
            feature.MaxRequestBodySize = limit + 1;
        await using var stream = new HashedStream(http.Request.Body, limit);
        var rows = await Table(stream, http.RequestServices.GetRequiredService<ShapeBook>().Of(typeof(TRow)), http.RequestAborted);
        return new(rows, skips, Writes.RequestOf(http, stream.Sha256()));
    }

    private static async Task<ImmutableArray<SentRow<TRow>>> Table(HashedStream stream, Shape shape, CancellationToken cancellation)
    {
        try
        {
            using var text = new StreamReader(stream, new UTF8Encoding(false, throwOnInvalidBytes: true), leaveOpen: true);
            await using var csv = await CsvDataReader.CreateAsync(text, new CsvDataReaderOptions { HasHeaders = true }, cancellation);
            var rows = await ReadRows(csv, Header(csv), shape, cancellation);
            await stream.CopyToAsync(Stream.Null, cancellation);
            return rows;
        }
        catch (DecoderFallbackException)
        {
            throw new ProblemException(Problems.MalformedCsv, "The table is not UTF-8.");
        }
        catch (Exception broken) when (broken is FormatException or InvalidDataException or CsvMissingHeadersException or ArgumentException)
        {
            throw new ProblemException(Problems.MalformedCsv, "The table breaks: " + broken.Message);
        }
    }

    private static string[] Header(CsvDataReader csv)
    {
        var known = RowJson.Columns(typeof(TRow));
        var names = Enumerable.Range(0, csv.FieldCount).Select(i => csv.GetName(i).Trim()).ToArray();
        var complaints = new Complaints();
        foreach (var name in names.Where(n => !known.Contains(n)))
            complaints.AddUnknown("row/1/" + name, FieldProblems.UnknownField, $"There is no column {name}.", name, known);
        foreach (var twice in names.GroupBy(n => n, StringComparer.Ordinal).Where(g => g.Count() > 1))
            complaints.Add("row/1/" + twice.Key, FieldProblems.DuplicateField, $"The column {twice.Key} is there twice.");
        complaints.ThrowIfAny(Problems.MalformedCsv);
        return names;
    }

    private static async Task<ImmutableArray<SentRow<TRow>>> ReadRows(CsvDataReader csv, string[] names, Shape shape, CancellationToken cancellation)
    {
        var rows = ImmutableArray.CreateBuilder<SentRow<TRow>>();
        for (var line = 2; await csv.ReadAsync(cancellation); line++)
        {
            if (csv.RowFieldCount > 0 && csv.GetString(0) == EndMark)
                break;
            if (rows.Count == MostRows)
                throw new ProblemException(Problems.MalformedCsv, $"The table has more than {MostRows} rows.");
            rows.Add(Row(Cells(csv, names), line, shape));
        }

        return rows.ToImmutable();
    }

    private static SentRow<TRow> Row(Dictionary<string, string> cells, int line, Shape shape)
    {
        var (complaints, read) = (new Complaints(), new Complaints());
        using var json = JsonDocument.Parse(RowJson.Of(typeof(TRow), cells).ToJsonString());
        var value = (TRow?)shape.Read(json.RootElement, "", read);
        foreach (var error in read.Errors)
            complaints.Add(At(error.Pointer), error);
        return new SentRow<TRow>(value, At, complaints);

        // A fault within a cell (an attribute, a reading) is one of the cell's column.
        string At(string pointer) => FormattableString.Invariant($"row/{line}/{Column(pointer)}");
    }

    private static string Column(string pointer)
    {
        var dotted = pointer.TrimStart('/').Replace('/', '.');
        var columns = RowJson.Columns(typeof(TRow));
        return columns.Contains(dotted) ? dotted : columns.FirstOrDefault(c => dotted.StartsWith(c + ".", StringComparison.Ordinal)) ?? dotted;
    }

    private static Dictionary<string, string> Cells(CsvDataReader csv, string[] names) => names
        .Take(csv.RowFieldCount)
        .Select((name, i) => (Name: name, Text: CsvCell.Unguarded(csv.GetString(i).Trim())))
        .Where(c => c.Text.Length > 0)
        .ToDictionary(c => c.Name, c => c.Text, StringComparer.Ordinal);
}

/// <summary>What becomes of rows with faults.</summary>
public static class BadRows
{
    /// <summary>Name of the query parameter.</summary>
    public const string Name = "bad";

    /// <summary>The whole list is refused.</summary>
    public const string Refuse = "refuse";

    /// <summary>They are left out.</summary>
    public const string Skip = "skip";

    /// <summary>The query parameter.</summary>
    public static readonly QueryOption Option = new(
        Name, "What becomes of rows with faults: refuse the whole list (usual), or skip them, take the others over and report what was left out.", "string", [Refuse, Skip]);
}
