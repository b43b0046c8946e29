using System.Collections.Immutable;
using System.Text.Json.Nodes;

namespace RebuildApi.Server.Requests.Tables;

/// <summary>A list that is sent to be taken over.</summary>
/// <typeparam name="TRow">One row.</typeparam>
public interface IRows<TRow>
{
    /// <summary>Its rows.</summary>
    ImmutableArray<TRow> Rows { get; }
}

/// <summary>An entry of a list that can stand in one cell of a table, with semicolons between.</summary>
public interface IFromCell
{
    /// <summary>The entry as JSON; what can't be read is left for the rules of its fields to refuse.</summary>
    static abstract JsonNode FromCell(string entry);
}

/// <summary>One row that was sent.</summary>
/// <param name="Value">The row; none when it could not be read.</param>
/// <param name="Path">Turns a pointer within the row into one within the request.</param>
/// <param name="Complaints">What is wrong with it so far.</param>
/// <typeparam name="TRow">The row.</typeparam>
public sealed record SentRow<TRow>(TRow? Value, Func<string, string> Path, Complaints Complaints)
    where TRow : class;
