using System.Buffers;
using System.Text;
using System.Text.Json;

namespace RebuildApi.Engine.Identity;

/// <summary>Writes JSON by RFC 8785: members in the order of their UTF-16 code units, no white space, shortest strings, ECMAScript numbers.</summary>
internal static class CanonicalWriter
{
    private static readonly SearchValues<char> s_escaped = SearchValues.Create([.. Enumerable.Range(0, ' ').Select(c => (char)c), '"', '\\']);

    public static void Write(JsonElement element, StringBuilder text)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                WriteObject(element, text);
                break;
            case JsonValueKind.Array:
                WriteArray(element, text);
                break;
            case JsonValueKind.String:
                WriteString(element.GetString()!, text);
                break;
            case JsonValueKind.Number:
                text.Append(EcmaScriptNumber.Format(element.GetDouble()));
                break;
            default:
                text.Append(element.GetRawText());
                break;
        }
    }

    private static void WriteObject(JsonElement element, StringBuilder text)
    {
        text.Append('{');
        var first = true;
        foreach (var member in element.EnumerateObject().OrderBy(m => m.Name, StringComparer.Ordinal))
        {
            if (!first)
                text.Append(',');
            first = false;
            WriteString(member.Name, text);
            text.Append(':');
            Write(member.Value, text);
        }

        text.Append('}');
    }

    private static void WriteArray(JsonElement element, StringBuilder text)
    {
        text.Append('[');
        var first = true;
        foreach (var item in element.EnumerateArray())
        {
            if (!first)
                text.Append(',');
            first = false;
            Write(item, text);
        }

        text.Append(']');
    }

    private static void WriteString(string value, StringBuilder text)
    {
        text.Append('"');
        if (!value.AsSpan().ContainsAny(s_escaped))
        {
            text.Append(value).Append('"');
            return;
        }

        foreach (var c in value)
            text.Append(Escaped(c));
        text.Append('"');
    }

    private static string Escaped(char c) => c switch
    {
        '"' => "\\\"",
        '\\' => "\\\\",
        '\b' => "\\b",
        '\f' => "\\f",
        '\n' => "\\n",
        '\r' => "\\r",
        '\t' => "\\t",
        < ' ' => $"\\u{(int)c:x4}",
        _ => c.ToString(),
    };
}
