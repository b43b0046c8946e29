using System.Collections.Immutable;

namespace RebuildApi.Server.Requests;

/// <summary>A request that may also come as the rows of a filled-in sheet.</summary>
/// <typeparam name="T">The request.</typeparam>
/// <typeparam name="TJson">Its JSON form.</typeparam>
public interface IFromSheet<T, TJson>
{
    /// <summary>Makes the request from the rows that are its own; the pointers say which row each entry came from.</summary>
    static abstract (T Value, ImmutableArray<string> Pointers) FromSheet(ImmutableArray<SheetRow> rows, Complaints complaints);

    /// <summary>Makes the request from its JSON form; the pointers say where each entry stands in it.</summary>
    static abstract (T Value, ImmutableArray<string> Pointers) FromJson(TJson json);
}
