using SkiaSharp;

namespace RebuildApi.Server.Pages;

/// <summary>The sheets of a PDF while they are filled from the top: A4 (ISO 216), each with a foot that says which of how many it is.</summary>
public sealed class Sheets : IDisposable
{
    /// <summary>Left edge of what is printed, points.</summary>
    public const float Left = 43;

    /// <summary>Width of what is printed, points.</summary>
    public const float Width = SheetWidth - 2 * Left;

    private const float Foot = 7.5f;
    private const float Top = 45;
    private const float Bottom = SheetHeight - 52;
    private const float SheetWidth = 595;
    private const float SheetHeight = 842;
    private static readonly SKRect Area = new(0, 0, SheetWidth, SheetHeight);

    private readonly List<SKPicture> _full = [];
    private SKPictureRecorder _recorder = new();

    /// <summary>An empty first sheet.</summary>
    public Sheets() => Canvas = _recorder.BeginRecording(Area);

    /// <summary>Where the sheet is printed.</summary>
    public SKCanvas Canvas { get; private set; }

    /// <summary>How far down the sheet is filled.</summary>
    public float Y { get; set; } = Top;

    /// <summary>How much room is left.</summary>
    public float Room => Bottom - Y;

    /// <summary>How much room a fresh sheet has.</summary>
    public static float Most => Bottom - Top;

    /// <summary>Begins a fresh sheet unless there is that much room.</summary>
    public bool Need(float height)
    {
        if (Room >= height || Y <= Top)
            return false;
        Turn();
        return true;
    }

    /// <summary>Begins a fresh sheet.</summary>
    public void Turn()
    {
        _full.Add(_recorder.EndRecording());
        _recorder.Dispose();
        _recorder = new SKPictureRecorder();
        (Canvas, Y) = (_recorder.BeginRecording(Area), Top);
    }

    /// <summary>All sheets as PDF (ISO 32000).</summary>
    /// <param name="title">The title of the document.</param>
    /// <param name="made">When it was made.</param>
    /// <param name="foot">The foot of a sheet, from its number and how many there are.</param>
    public byte[] Pdf(string title, DateTimeOffset made, Func<int, int, string> foot)
    {
        _full.Add(_recorder.EndRecording());
        using var bytes = new MemoryStream();
        using var font = Fonts.At(Foot, false);
        using (var document = SKDocument.CreatePdf(bytes, new SKDocumentPdfMetadata { Title = title, Creator = "RebuildApi", Creation = made.UtcDateTime, RasterDpi = 144, EncodingQuality = 101 }))
        {
            for (var i = 0; i < _full.Count; i++)
            {
                var canvas = document.BeginPage(SheetWidth, SheetHeight);
                canvas.DrawPicture(_full[i]);
                Ink.Line(canvas, Ink.Lines(foot(i + 1, _full.Count), font, Width)[0], Left, SheetHeight - 30, Foot);
                document.EndPage();
            }

            document.Close();
        }

        return bytes.ToArray();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _recorder.Dispose();
        foreach (var sheet in _full)
            sheet.Dispose();
    }
}
