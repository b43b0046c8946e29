using System.Collections.Immutable;
using System.Text.Json;
using RebuildApi.Engine.Quantities;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>Readings as they stand in a cell of a sheet: <c>2.2045</c>, <c>&gt;= 2.3</c>, <c>&lt;= 0.4</c>, <c>tight</c>; several with a space between.</summary>
public static class ReadingCell
{
    private const string Tight = "tight";

    /// <summary>The readings; what can't be read is complained of.</summary>
    public static ImmutableArray<ReadingRequest> Read(string cell, string? unit, string pointer, Complaints complaints)
    {
        var words = cell.Replace(">=", " >=", StringComparison.Ordinal).Replace("<=", " <=", StringComparison.Ordinal)
            .Replace("= ", "=", StringComparison.Ordinal)
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return [.. words.Select(w => One(w, unit, pointer, complaints)).OfType<ReadingRequest>()];
    }

    private static ReadingRequest? One(string word, string? unit, string pointer, Complaints complaints)
    {
        if (word.Equals(Tight, StringComparison.OrdinalIgnoreCase))
            return new ReadingRequest(Unit: unit, Tight: true);
        var bound = word[0] is '>' or '<';
        var number = bound ? word.TrimStart('>', '<', '=') : word;
        if (!IsJsonNumber(number))
        {
            complaints.Add(pointer, FieldProblems.WrongType, "A number with a point is needed here, or tight, or >= or <= before a number.", word);
            return null;
        }

        if (!bound)
            return new ReadingRequest(new SentNumber(number), unit);
        if (unit is null)
        {
            complaints.Add(pointer, FieldProblems.BareNumber, "The unit of the row is missing.", word);
            return null;
        }

        var quantity = new SentQuantity(new SentNumber(number), unit);
        return word[0] == '>' ? new ReadingRequest(AtLeast: quantity) : new ReadingRequest(AtMost: quantity);
    }

    // Kept as sent and shown again as JSON, so it must be a number of JSON's grammar, not only of a spreadsheet's.
    private static bool IsJsonNumber(string text)
    {
        if (NumberText.TryRead(text) is null)
            return false;
        try
        {
            using var document = JsonDocument.Parse(text);
            return document.RootElement.ValueKind == JsonValueKind.Number;
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
