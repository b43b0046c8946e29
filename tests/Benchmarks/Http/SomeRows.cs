using System.Globalization;
using System.Text;

namespace RebuildApi.Benchmarks.Http;

/// <summary>Rows to check, the same thousand over and over: most conform, some do not, some are doubtful.</summary>
internal static class SomeRows
{
    public const int Different = 1000;

    /// <summary>The thousand.</summary>
    public static byte[] Thousand { get; } = Encoding.UTF8.GetBytes(string.Concat(Enumerable.Range(0, Different).Select(Row)));

    /// <summary>So many thousand rows in memory.</summary>
    public static Stream Open(int thousands)
    {
        var all = new byte[thousands * Thousand.Length];
        for (var i = 0; i < thousands; i++)
            Thousand.CopyTo(all, i * Thousand.Length);
        return new MemoryStream(all);
    }

    private static string Row(int i) => string.Create(
        CultureInfo.InvariantCulture,
        $$"""{"family":"brackenmere-4","at":"third-gear/bore","value":{{47.60 + 0.0002 * i:F4}},"unit":"mm","uncertainty":0.002,"id":"row {{i}}"}""") + "\n";
}
