using System.Text;
using System.Text.Json;
using System.Text.Unicode;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests;

/// <summary>Parses JSON and says where it breaks.</summary>
public static class StrictJson
{
    private const int Deepest = 32;

    /// <summary>Parses one JSON value; names may still stand twice, which is complained of later by its pointer.</summary>
    /// <exception cref="ProblemException">It is not JSON.</exception>
    public static JsonDocument Parse(ReadOnlyMemory<byte> utf8)
    {
        if (!Utf8.IsValid(utf8.Span))
            throw new ProblemException(Problems.MalformedJson, "The body is not UTF-8.");
        try
        {
            RefuseHalfCharacters(utf8.Span);
            return JsonDocument.Parse(utf8, new JsonDocumentOptions { MaxDepth = Deepest, AllowDuplicateProperties = true });
        }
        catch (JsonException broken)
        {
            throw Malformed(utf8.Span, broken);
        }
    }

    // An escape such as \uD800 alone is JSON but no text; better to say so here than to stumble over it anywhere later.
    private static void RefuseHalfCharacters(ReadOnlySpan<byte> utf8)
    {
        var reader = new Utf8JsonReader(utf8, new JsonReaderOptions { MaxDepth = Deepest });
        while (reader.Read())
        {
            if (reader.TokenType is not (JsonTokenType.String or JsonTokenType.PropertyName) || !reader.ValueIsEscaped)
                continue;
            try
            {
                _ = reader.GetString();
            }
            catch (InvalidOperationException)
            {
                throw new ProblemException(Problems.MalformedJson, $"The text at byte {reader.TokenStartIndex} holds half a character.");
            }
        }
    }

    private static ProblemException Malformed(ReadOnlySpan<byte> utf8, JsonException broken)
    {
        var (line, column) = Place(utf8, broken);
        var what = utf8.IsEmpty ? "There is no body." : $"The JSON breaks at line {line}, column {column}.";
        return new ProblemException(Problems.MalformedJson, what)
        {
            Extras = new Dictionary<string, object> { ["line"] = line, ["column"] = column }.ToExtras(),
        };
    }

    private static (long Line, long Column) Place(ReadOnlySpan<byte> utf8, JsonException broken)
    {
        var line = broken.LineNumber ?? 0;
        var start = 0;
        for (var i = 0L; i < line; i++)
            start += utf8[start..].IndexOf((byte)'\n') + 1;
        var bytes = (int)Math.Min(broken.BytePositionInLine ?? 0, utf8.Length - start);
        return (line + 1, Encoding.UTF8.GetCharCount(utf8.Slice(start, bytes)) + 1);
    }
}
