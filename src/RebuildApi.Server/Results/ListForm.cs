namespace RebuildApi.Server.Results;

/// <summary>In which form a list is written; fixed by the suffix of the address, and where it has none and the address offers more than one form, asked for by Accept.</summary>
public sealed record ListForm(string Suffix, string MediaType)
{
    /// <summary>An object with items, next and asOf.</summary>
    public static readonly ListForm Json = new("", "application/json");

    /// <summary>A table with a header row; the last row says how many.</summary>
    public static readonly ListForm Csv = new(".csv", "text/csv");

    /// <summary>One JSON object on each line; the last line says how many.</summary>
    public static readonly ListForm Ndjson = new(".ndjson", "application/x-ndjson");

    /// <summary>One document of an open standard.</summary>
    public static readonly ListForm Xml = new(".xml", "application/xml");
}
