using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>Which part is, or is to be, in which place. Fitted counts before chosen, chosen before found.</summary>
/// <param name="Position">The position.</param>
/// <param name="Index">1 to the position's quantity.</param>
/// <param name="Component">The part.</param>
/// <param name="Role">Found there, chosen to go there, or fitted there.</param>
/// <param name="Facing">Which way round.</param>
/// <param name="IndexMark">The mark that says how it sat on its mate, if one was made.</param>
public sealed record Placement(string Position, int Index, string Component, PlacementRole Role, Facing Facing, string? IndexMark);

/// <summary>How a part comes to be in a place.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<PlacementRole>))]
public enum PlacementRole
{
    /// <summary>It came out of there.</summary>
    Found,

    /// <summary>It is to go there.</summary>
    Chosen,

    /// <summary>It went in there.</summary>
    Fitted,
}

/// <summary>Which way round a part sits.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<Facing>))]
public enum Facing
{
    /// <summary>Not recorded, or the same both ways.</summary>
    Unspecified,

    /// <summary>Marked face toward the input.</summary>
    Input,

    /// <summary>Marked face toward the output.</summary>
    Output,
}
