using System.Text.Json;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Checks;

/// <summary>Rows as one JSON object on each line.</summary>
public sealed class JsonRows : IRowForm
{
    /// <inheritdoc/>
    public CheckFault? Read(ReadOnlySpan<byte> line, ref CheckRow row)
    {
        var reader = new Utf8JsonReader(line);
        try
        {
            return Object(ref reader, ref row);
        }
        catch (JsonException)
        {
            return NotAnObject(line);
        }
    }

    private static CheckFault? Object(scoped ref Utf8JsonReader reader, ref CheckRow row)
    {
        if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject)
            throw new JsonException();
        var seen = 0;
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var field = CheckRow.IndexOf(reader.ValueSpan);
            if (field < 0)
                return CheckFault.Unknown(System.Text.Encoding.UTF8.GetString(reader.ValueSpan), FieldProblems.UnknownField, reader.ValueSpan, CheckRow.Names);
            if ((seen & (1 << field)) != 0)
                return CheckFault.In(CheckRow.Names[field], FieldProblems.DuplicateField, default, "each field once");
            seen |= 1 << field;
            reader.Read();
            if (IsWrongType(reader.TokenType, field))
                return CheckFault.In(CheckRow.Names[field], FieldProblems.WrongType, reader.ValueSpan, field is 2 or 4 ? "a number" : "text");
            row.Set(field, Text(ref reader));
        }

        return reader.TokenType == JsonTokenType.EndObject && !reader.Read() ? null : throw new JsonException();
    }

    private static bool IsWrongType(JsonTokenType token, int field) =>
        token != (field is 2 or 4 ? JsonTokenType.Number : JsonTokenType.String) && token != JsonTokenType.Null;

    private static ReadOnlySpan<byte> Text(scoped ref Utf8JsonReader reader)
    {
        if (reader.TokenType == JsonTokenType.Null)
            return default;
        return reader.ValueIsEscaped ? System.Text.Encoding.UTF8.GetBytes(reader.GetString()!) : reader.ValueSpan;
    }

    private static CheckFault NotAnObject(ReadOnlySpan<byte> line) =>
        CheckFault.In("", Problems.MalformedJson, line, "one JSON object on each line");
}
