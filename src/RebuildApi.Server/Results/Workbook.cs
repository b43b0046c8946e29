using System.Data;
using System.Globalization;
using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;
using MiniExcelLibs;
using MiniExcelLibs.OpenXml;

namespace RebuildApi.Server.Results;

/// <summary>Tables of records as a workbook (Office Open XML, ECMA-376). Text stays text, whatever it begins with; numbers are numbers.</summary>
/// <param name="fileName">What a browser saves it as.</param>
/// <param name="sheets">The sheets, in order.</param>
public sealed class Workbook(string fileName, params IReadOnlyList<WorkbookSheet> sheets) : IResult, IEndpointMetadataProvider
{
    /// <summary>The media type of a workbook.</summary>
    public const string MediaType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    private static readonly OpenXmlConfiguration Plain = new() { AutoFilter = false, FastMode = true, EnableAutoWidth = true };

    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        using var bytes = new MemoryStream();
        await bytes.SaveAsAsync(sheets.ToDictionary(s => s.Name, s => (object)s.Table), configuration: Plain, cancellationToken: httpContext.RequestAborted);
        httpContext.Begin();
        httpContext.Response.ContentType = MediaType;
        httpContext.Response.Headers.ContentDisposition = $"attachment; filename=\"{fileName}\"";
        bytes.Position = 0;
        await bytes.CopyToAsync(httpContext.Response.Body, httpContext.RequestAborted);
    }

    /// <inheritdoc/>
    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(Stream), [MediaType]));
}

/// <summary>One sheet of a workbook.</summary>
/// <param name="Name">Its name, at most 31 letters.</param>
/// <param name="Table">Its rows.</param>
public sealed record WorkbookSheet(string Name, DataTable Table)
{
    /// <summary>The sheet of some records, with the columns that their CSV has.</summary>
    public static WorkbookSheet Of<T>(string name, IEnumerable<T> rows)
    {
        Column<T>[] columns = [.. Columns.Of<T>()];
        var table = new DataTable(name) { Locale = CultureInfo.InvariantCulture };
        table.Columns.AddRange([.. columns.Select(c => new DataColumn(c.Name, typeof(object)))]);
        foreach (var row in rows)
            table.Rows.Add([.. columns.Select(c => Cell(c, row))]);
        return new WorkbookSheet(name, table);
    }

    private static object Cell<T>(Column<T> column, T row) => column.Read(row) switch
    {
        null => DBNull.Value,
        var text when column.IsNumber && decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) => number,
        var text => text,
    };
}
