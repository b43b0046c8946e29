using System.Collections.Immutable;

namespace RebuildApi.Server.Requests;

/// <summary>A query parameter that an address takes. What is not declared is refused.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Description">What it does.</param>
/// <param name="Type">JSON type: <c>string</c>, <c>integer</c>, <c>boolean</c>.</param>
/// <param name="Allowed">The values allowed, when the list is closed.</param>
/// <param name="Required">Whether it must be sent.</param>
public sealed record QueryOption(string Name, string Description, string Type = "string", ImmutableArray<string>? Allowed = null, bool Required = false)
{
    /// <summary>Lengths in millimetres or inches.</summary>
    public static readonly QueryOption Units = new("units", "Show lengths in millimetres or inches. Readings are shown as they were sent unless this is given.", "string", ["mm", "in"]);

    /// <summary>Undo everything at the end.</summary>
    public static readonly QueryOption DryRun = new("dryRun", "Check and answer as if it were done, and undo everything; the answer then carries dryRun: true. The same as Prefer: dry-run.", "boolean");

    /// <summary>How many entries a page has.</summary>
    public static readonly QueryOption Limit = new("limit", "How many entries at most; larger numbers are brought down to 500. Tables without it hold the whole list.", "integer");

    /// <summary>Where a page begins.</summary>
    public static readonly QueryOption Cursor = new("cursor", "Where to go on; taken from next, never made up.");

    /// <summary>Byte order mark.</summary>
    public static readonly QueryOption Bom = new("bom", "Begin with a byte order mark, for spreadsheets that guess the letters wrong without.", "boolean");

    /// <summary>Separator of columns; no closed list in the document, since generators of clients make names of its entries and these have none.</summary>
    public static readonly QueryOption Separator = new("sep", "What stands between columns: a comma, a semicolon, or the word tab. A comma when not said.");
}
