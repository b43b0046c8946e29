using System.Globalization;
using System.Net;
using System.Text;

namespace RebuildApi.Benchmarks.Http;

/// <summary>Rows to check, the same thousand over and over: most conform, some do not, some are doubtful.</summary>
internal sealed class SomeRows(long count) : HttpContent
{
    private const int Different = 1000;
    private static readonly byte[] s_thousand = Encoding.UTF8.GetBytes(string.Concat(Enumerable.Range(0, Different).Select(Row)));

    /// <summary>So many thousand rows in memory.</summary>
    public static Stream Open(int thousands)
    {
        var all = new byte[thousands * s_thousand.Length];
        for (var i = 0; i < thousands; i++)
            s_thousand.CopyTo(all, i * s_thousand.Length);
        return new MemoryStream(all);
    }

    /// <inheritdoc/>
    protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
    {
        for (var sent = 0L; sent < count; sent += Different)
            await stream.WriteAsync(s_thousand);
    }

    /// <inheritdoc/>
    protected override bool TryComputeLength(out long length)
    {
        length = 0;
        return false;
    }

    private static string Row(int i) => string.Create(
        CultureInfo.InvariantCulture,
        $$"""{"family":"brackenmere-4","at":"third-gear/bore","value":{{47.60 + 0.0002 * i:F4}},"unit":"mm","uncertainty":0.002,"id":"row {{i}}"}""") + "\n";
}
