using System.Globalization;
using System.Text.Json;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests.Shapes;

/// <summary>Text, with its rule.</summary>
public sealed class TextShape(FieldRule rule) : Shape
{
    /// <inheritdoc/>
    public override object? Read(JsonElement json, string pointer, Complaints complaints)
    {
        if (json.ValueKind != JsonValueKind.String)
            return Wrong(json, pointer, complaints, "text");
        var text = json.GetString()!;
        rule.Check(text, pointer, complaints);
        return text;
    }
}

/// <summary>True or false.</summary>
public sealed class TruthShape : Shape
{
    /// <inheritdoc/>
    public override object? Read(JsonElement json, string pointer, Complaints complaints) =>
        json.ValueKind is JsonValueKind.True or JsonValueKind.False ? json.GetBoolean() : Wrong(json, pointer, complaints, "true or false");
}

/// <summary>A whole number.</summary>
public sealed class WholeShape(FieldRule? rule) : Shape
{
    /// <inheritdoc/>
    public override object? Read(JsonElement json, string pointer, Complaints complaints)
    {
        if (json.ValueKind != JsonValueKind.Number || !json.TryGetInt32(out var number))
            return Wrong(json, pointer, complaints, "a whole number");
        rule?.Check(number, pointer, complaints);
        return number;
    }
}

/// <summary>A decimal number, exactly as sent or not at all.</summary>
public sealed class DecimalShape(FieldRule? rule) : Shape
{
    /// <inheritdoc/>
    public override object? Read(JsonElement json, string pointer, Complaints complaints)
    {
        if (json.ValueKind != JsonValueKind.Number)
            return Wrong(json, pointer, complaints, "a number");
        if (!new SentNumber(json.GetRawText()).TryGetDecimal(out var number))
        {
            complaints.Add(pointer, FieldProblems.OutOfRange, "The number is too large, too small or too long to be kept exactly.", json.GetRawText());
            return null;
        }

        rule?.Check(number, pointer, complaints);
        return number;
    }
}

/// <summary>A number kept as sent; its range is checked where its unit is known.</summary>
public sealed class SentNumberShape : Shape
{
    /// <inheritdoc/>
    public override object? Read(JsonElement json, string pointer, Complaints complaints) =>
        json.ValueKind == JsonValueKind.Number ? new SentNumber(json.GetRawText()) : Wrong(json, pointer, complaints, "a number");
}

/// <summary>A moment with its offset.</summary>
public sealed class MomentShape : Shape
{
    private static readonly string[] Forms =
    [
        "yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK", "yyyy-MM-dd'T'HH:mmK",
    ];

    /// <inheritdoc/>
    public override object? Read(JsonElement json, string pointer, Complaints complaints)
    {
        if (json.ValueKind != JsonValueKind.String)
            return Wrong(json, pointer, complaints, "text");
        var text = json.GetString()!;
        var hasOffset = text.EndsWith('Z') || text.LastIndexOfAny(['+', '-']) > 10;
        if (hasOffset && DateTimeOffset.TryParseExact(text, Forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var moment)
            && moment.UtcDateTime.Year is > 1900 and < 9000)
            return moment.ToUniversalTime();
        complaints.Add(pointer, FieldProblems.BadTime, "This is not a time with an offset.", text, ["2026-03-02T12:00:00Z"]);
        return null;
    }
}

/// <summary>A day.</summary>
public sealed class DayShape : Shape
{
    /// <inheritdoc/>
    public override object? Read(JsonElement json, string pointer, Complaints complaints)
    {
        if (json.ValueKind != JsonValueKind.String)
            return Wrong(json, pointer, complaints, "text");
        var text = json.GetString()!;
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            return day;
        complaints.Add(pointer, FieldProblems.BadTime, "This is not a day.", text, ["2026-03-02"]);
        return null;
    }
}

/// <summary>A word that stands for one value of an enum.</summary>
public sealed class WordShape : Shape
{
    private readonly Dictionary<string, object> _values;

    /// <summary>Takes the names in lower case with hyphens.</summary>
    public WordShape(Type type)
    {
        _values = Enum.GetValues(type).Cast<object>().ToDictionary(v => JsonNamingPolicy.KebabCaseLower.ConvertName(v.ToString()!), StringComparer.Ordinal);
    }

    /// <inheritdoc/>
    public override object? Read(JsonElement json, string pointer, Complaints complaints)
    {
        if (json.ValueKind != JsonValueKind.String)
            return Wrong(json, pointer, complaints, "text");
        var text = json.GetString()!;
        if (_values.TryGetValue(text, out var value))
            return value;
        complaints.AddUnknown(pointer, FieldProblems.NotAllowed, $"This is not one of: {string.Join(", ", _values.Keys)}.", text, _values.Keys);
        return null;
    }
}
