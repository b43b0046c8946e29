using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Composition;

/// <summary>Reads values of a dimension that the request names.</summary>
public static class Points
{
    /// <summary>A value in SI; 0 with a complaint.</summary>
    public static double Si(SentQuantity sent, Dimension dimension, string pointer, Complaints complaints) =>
        Quantities.Read(sent.Value, sent.Unit, dimension, pointer, complaints)?.InSi ?? 0;

    /// <summary>A value that may be missing.</summary>
    public static Quantity? Maybe(SentQuantity? sent, Dimension dimension, string pointer, Complaints complaints) =>
        sent is null ? null : Quantities.Read(sent.Value, sent.Unit, dimension, pointer, complaints);

    /// <summary>Values in SI.</summary>
    public static ImmutableArray<double> Si(ImmutableArray<SentQuantity> sent, Dimension dimension, string pointer, Complaints complaints) =>
        [.. sent.Select((q, i) => Si(q, dimension, Pointer.Entry(pointer, i), complaints))];
}
