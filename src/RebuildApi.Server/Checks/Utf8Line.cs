using System.Buffers;
using System.Globalization;
using System.Text.Json;
using System.Text.Unicode;
using RebuildApi.Server.Requests.Tables;

namespace RebuildApi.Server.Checks;

/// <summary>Writes one line into a buffer that was asked for once, without allocation.</summary>
public ref struct Utf8Line(IBufferWriter<byte> to, int atMost)
{
    private readonly Span<byte> _span = to.GetSpan(atMost);
    private int _length;

    /// <summary>As it stands.</summary>
    public void Raw(ReadOnlySpan<byte> utf8)
    {
        utf8.CopyTo(_span[_length..]);
        _length += utf8.Length;
    }

    /// <summary>A whole number.</summary>
    public void Number(long number)
    {
        number.TryFormat(_span[_length..], out var written, default, CultureInfo.InvariantCulture);
        _length += written;
    }

    /// <summary>An estimate, to six significant digits.</summary>
    public void Number(double number)
    {
        if (double.IsFinite(number))
        {
            number.TryFormat(_span[_length..], out var written, "G6", CultureInfo.InvariantCulture);
            _length += written;
        }
    }

    /// <summary>A chance, to six decimals without needless noughts. What is not quite sure never reads as 1.</summary>
    public void Chance(double chance)
    {
        const long One = 1_000_000;
        var millionths = chance >= 1 ? One : Math.Min(One - 1, (long)Math.Round(chance * One));
        if (millionths is 0 or One)
        {
            Number(millionths / One);
            return;
        }

        Raw("0."u8);
        for (var place = One / 10; millionths > 0; place /= 10)
        {
            _span[_length++] = (byte)('0' + millionths / place);
            millionths %= place;
        }
    }

    /// <summary>The inside of a JSON string.</summary>
    public void Json(ReadOnlySpan<byte> utf8)
    {
        if (utf8.ContainsAnyExceptInRange((byte)0x23, (byte)0x7E) && !IsPlain(utf8))
            Raw(JsonEncodedText.Encode(Utf8.IsValid(utf8) ? utf8 : "?"u8).EncodedUtf8Bytes);
        else if (utf8.Contains((byte)'\\'))
            Raw(JsonEncodedText.Encode(utf8).EncodedUtf8Bytes);
        else
            Raw(utf8);
    }

    /// <summary>A cell of a table: quoted where it must be, guarded against formulas.</summary>
    public void Cell(ReadOnlySpan<byte> utf8)
    {
        if (utf8.IsEmpty)
            return;
        if (utf8.IndexOfAny(s_special) < 0)
            Raw(utf8);
        else
            Raw(System.Text.Encoding.UTF8.GetBytes(CsvCell.Text(System.Text.Encoding.UTF8.GetString(utf8), ',')));
    }

    /// <summary>Hands the line over.</summary>
    public readonly void Done() => to.Advance(_length);

    private static readonly SearchValues<byte> s_special = SearchValues.Create("=+-@\t\r\n,\" "u8);

    private static bool IsPlain(ReadOnlySpan<byte> utf8) =>
        !utf8.ContainsAnyInRange((byte)0, (byte)0x1F) && !utf8.Contains((byte)'"') && Utf8.IsValid(utf8);
}
