using System.Globalization;
using RebuildApi.Storage;

namespace RebuildApi.Server.Commands;

/// <summary>A line that grows with what is done. Written to standard error, and only to a terminal.</summary>
internal sealed class Bar(TextWriter output, string what) : IProgress<HowFar>
{
    private const int Width = 40;
    private int _shown = -1;

    /// <summary>A bar, or none where nobody would see it.</summary>
    public static IProgress<HowFar>? On(string what) => Console.IsErrorRedirected ? null : new Bar(Console.Error, what);

    /// <inheritdoc/>
    public void Report(HowFar value)
    {
        var share = value.All > 0 ? (int)Math.Clamp(Width * value.Done / value.All, 0, Width) : 0;
        if (share == _shown)
            return;
        _shown = share;
        output.Write($"\r[{new string('#', share)}{new string('.', Width - share)}] {value.Done.ToString("N0", CultureInfo.InvariantCulture)} {what}");
        if (share == Width)
            output.WriteLine();
    }
}
