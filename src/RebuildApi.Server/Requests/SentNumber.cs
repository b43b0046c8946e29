using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace RebuildApi.Server.Requests;

/// <summary>A number as it was sent, letter for letter, so that 0.0150 stays 0.0150 and nothing is rounded on the way in.</summary>
/// <param name="Text">A JSON number.</param>
[JsonConverter(typeof(SentNumberConverter))]
public readonly record struct SentNumber(string Text)
{
    /// <summary>The number as a decimal, when it is one exactly: 1e-40 and 1e999 are not.</summary>
    public bool TryGetDecimal(out decimal value)
    {
        value = 0;
        var text = Text ?? "";
        if (text.Length > 60 || !decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value))
            return false;
        return value != 0 ? HasNoMoreThan28Digits(text) : HasOnlyZeros(text);
    }

    private static bool HasOnlyZeros(string text)
    {
        var exponent = text.IndexOfAny(['e', 'E']);
        return (exponent < 0 ? text : text[..exponent]).All(c => c is '0' or '.' or '-' or '+');
    }

    // A decimal holds 28 digits for certain, and 28 places after the point; what lies beyond would be dropped without a word.
    private static bool HasNoMoreThan28Digits(string text)
    {
        var exponentAt = text.IndexOfAny(['e', 'E']);
        var mantissa = exponentAt < 0 ? text : text[..exponentAt];
        var exponent = exponentAt < 0 ? 0 : int.Parse(text[(exponentAt + 1)..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        var point = mantissa.IndexOf('.', StringComparison.Ordinal);
        var digits = mantissa.Trim('-', '+').Replace(".", "", StringComparison.Ordinal);
        var places = (point < 0 ? 0 : mantissa.Length - point - 1) - exponent;
        var trailing = digits.Length - digits.TrimEnd('0').Length;
        return digits.Trim('0').Length <= 28 && places - trailing <= 28;
    }
}

/// <summary>Writes the number as it was sent.</summary>
public sealed class SentNumberConverter : JsonConverter<SentNumber>
{
    /// <inheritdoc/>
    public override SentNumber Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using var element = JsonDocument.ParseValue(ref reader);
        return new SentNumber(element.RootElement.GetRawText());
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, SentNumber value, JsonSerializerOptions options) => writer.WriteRawValue(value.Text);
}
