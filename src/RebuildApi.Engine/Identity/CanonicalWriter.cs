using System.Buffers;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;

namespace RebuildApi.Engine.Identity;

/// <summary>Writes JSON by RFC 8785: members in the order of their UTF-16 code units, no white space, shortest strings, ECMAScript numbers.</summary>
internal static class CanonicalWriter
{
    private static readonly SearchValues<char> s_escaped = SearchValues.Create([.. Enumerable.Range(0, ' ').Select(c => (char)c), '"', '\\']);

    public static void Write(JsonElement element, IBufferWriter<byte> bytes)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                WriteObject(element, bytes);
                break;
            case JsonValueKind.Array:
                WriteArray(element, bytes);
                break;
            case JsonValueKind.String:
                WriteString(element.GetString()!, bytes);
                break;
            case JsonValueKind.Number:
                WriteNumber(element, bytes);
                break;
            default:
                bytes.Write(JsonMarshal.GetRawUtf8Value(element));
                break;
        }
    }

    private static void WriteObject(JsonElement element, IBufferWriter<byte> bytes)
    {
        var count = element.GetPropertyCount();
        var (names, values) = (ArrayPool<string>.Shared.Rent(count), ArrayPool<JsonElement>.Shared.Rent(count));
        var filled = 0;
        foreach (var member in element.EnumerateObject())
            (names[filled], values[filled++]) = (member.Name, member.Value);
        Array.Sort(names, values, 0, count, StringComparer.Ordinal);
        bytes.Write("{"u8);
        for (var i = 0; i < count; i++)
        {
            if (i > 0)
                bytes.Write(","u8);
            WriteString(names[i], bytes);
            bytes.Write(":"u8);
            Write(values[i], bytes);
        }

        bytes.Write("}"u8);
        ArrayPool<string>.Shared.Return(names, clearArray: true);
        ArrayPool<JsonElement>.Shared.Return(values, clearArray: true);
    }

    private static void WriteArray(JsonElement element, IBufferWriter<byte> bytes)
    {
        bytes.Write("["u8);
        var first = true;
        foreach (var item in element.EnumerateArray())
        {
            if (!first)
                bytes.Write(","u8);
            first = false;
            Write(item, bytes);
        }

        bytes.Write("]"u8);
    }

    // A small whole number is its own shortest form.
    private static void WriteNumber(JsonElement element, IBufferWriter<byte> bytes)
    {
        if (element.TryGetInt32(out var whole))
        {
            whole.TryFormat(bytes.GetSpan(11), out var length, default, CultureInfo.InvariantCulture);
            bytes.Advance(length);
            return;
        }

        Encoding.UTF8.GetBytes(EcmaScriptNumber.Format(element.GetDouble()), bytes);
    }

    private static void WriteString(string value, IBufferWriter<byte> bytes)
    {
        bytes.Write("\""u8);
        var rest = value.AsSpan();
        for (int at; (at = rest.IndexOfAny(s_escaped)) >= 0; rest = rest[(at + 1)..])
        {
            Encoding.UTF8.GetBytes(rest[..at], bytes);
            Encoding.UTF8.GetBytes(Escaped(rest[at]), bytes);
        }

        Encoding.UTF8.GetBytes(rest, bytes);
        bytes.Write("\""u8);
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
        _ => $"\\u{(int)c:x4}",
    };
}
