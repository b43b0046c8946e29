using System.Text.Json;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests.Shapes;

/// <summary>A value with its unit, of a dimension that the field names or that is known only later.</summary>
public sealed class QuantityShape(Shape inner, OfAttribute? of) : Shape
{
    /// <inheritdoc/>
    public override object? Read(JsonElement json, string pointer, Complaints complaints)
    {
        if (inner.Read(json, pointer, complaints) is not SentQuantity sent)
            return null;
        if (of is null)
            return sent;
        var quantity = Quantities.Read(sent.Value, sent.Unit, of.Dimension, pointer, complaints);
        return quantity is null || !Holds(quantity.InSi, sent, pointer, complaints) ? null : sent with { Read = quantity };
    }

    private bool Holds(double si, SentQuantity sent, string pointer, Complaints complaints)
    {
        if (of!.Sign == SignRule.Any || si > 0 || (si == 0 && of.Sign == SignRule.NotNegative))
            return true;
        var needed = of.Sign == SignRule.Positive ? "greater than 0" : "0 or greater";
        complaints.Add(pointer + "/value", FieldProblems.OutOfRange, $"The value must be {needed}.", sent.Value.Text);
        return false;
    }
}
