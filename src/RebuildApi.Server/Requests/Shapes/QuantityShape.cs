using System.Text.Json;
using RebuildApi.Contracts;

namespace RebuildApi.Server.Requests.Shapes;

/// <summary>A value with its unit, of a dimension that the field names or that is known only later.</summary>
public sealed class QuantityShape(Shape inner, Dimension? dimension) : Shape
{
    /// <inheritdoc/>
    public override object? Read(JsonElement json, string pointer, Complaints complaints)
    {
        if (inner.Read(json, pointer, complaints) is not SentQuantity sent)
            return null;
        if (dimension is not { } known)
            return sent;
        var quantity = Quantities.Read(sent.Value, sent.Unit, known, pointer, complaints);
        return quantity is null ? null : sent with { Read = quantity };
    }
}
