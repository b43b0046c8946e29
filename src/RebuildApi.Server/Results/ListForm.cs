namespace RebuildApi.Server.Results;

/// <summary>In which form a list is written; fixed by the suffix of the address.</summary>
public sealed record ListForm(string Suffix, string MediaType)
{
    /// <summary>An object with items, next and asOf.</summary>
    public static readonly ListForm Json = new("", "application/json");

    /// <summary>A table with a header row; the last row says how many.</summary>
    public static readonly ListForm Csv = new(".csv", "text/csv");

    /// <summary>One JSON object on each line; the last line says how many.</summary>
    public static readonly ListForm Ndjson = new(".ndjson", "application/x-ndjson");
}
