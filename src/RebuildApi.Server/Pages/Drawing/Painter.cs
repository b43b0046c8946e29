using SkiaSharp;

namespace RebuildApi.Server.Pages;

/// <summary>Paints drawings, dark on white, where there is no browser: as PNG, and into printed matter.</summary>
public static class Painter
{
    // Two dots for each unit: sharp on paper and on fine screens.
    private const int Dots = 2;
    private static readonly SKColor Ink = SKColor.Parse("#16202a");

    /// <summary>The drawing as PNG (ISO/IEC 15948).</summary>
    public static byte[] Png(Drawn drawn)
    {
        using var surface = SKSurface.Create(new SKImageInfo((int)Math.Ceiling(drawn.Sketch.Width) * Dots, (int)Math.Ceiling(drawn.Height) * Dots));
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale(Dots);
        Paint(drawn, surface.Canvas);
        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    /// <summary>The drawing on a canvas, from where that stands.</summary>
    public static void Paint(Drawn drawn, SKCanvas canvas)
    {
        foreach (var shape in drawn.Sketch.Shapes)
            Paint(shape, canvas);
    }

    private static void Paint(Shape shape, SKCanvas canvas)
    {
        switch (shape)
        {
            case BoxShape b:
                PaintBox(b, canvas);
                break;
            case LineShape l:
                using (var paint = Stroke(l.Thick, l.IsDashed ? [5, 4] : null))
                    canvas.DrawLine((float)l.X1, (float)l.Y1, (float)l.X2, (float)l.Y2, paint);
                break;
            case SignShape s:
                PaintSign(s, canvas);
                break;
            case WordsShape w:
                PaintWords(w, canvas);
                break;
        }
    }

    private static void PaintBox(BoxShape b, SKCanvas canvas)
    {
        var box = SKRect.Create((float)b.X, (float)b.Y, (float)b.W, (float)b.H);
        using var fill = new SKPaint { Color = SKColor.Parse(b.Fill).WithAlpha((byte)Math.Round(255 * b.Opacity)), IsAntialias = true };
        canvas.DrawRect(box, fill);
        if (b.Outline == Outline.None)
            return;
        using var line = Stroke(b.Outline == Outline.Thick ? 3 : 1, b.Outline == Outline.Dashed ? [4, 3] : null);
        canvas.DrawRect(box, line);
    }

    private static void PaintSign(SignShape s, SKCanvas canvas)
    {
        var (x, y) = ((float)s.X, (float)s.Y);
        using var fill = new SKPaint { Color = Ink, IsAntialias = true };
        using var line = Stroke(s.Sign == Sign.Cross ? 3 : 2, null);
        using var path = s.Sign == Sign.Diamond ? SKPath.ParseSvgPathData("M0 -8L8 0L0 8L-8 0Z") : SKPath.ParseSvgPathData("M-5 -5L5 5M-5 5L5 -5");
        if (s.Sign is Sign.Dot or Sign.Ring)
        {
            canvas.DrawCircle(x, y, s.Sign == Sign.Dot ? 6 : 5, s.Sign == Sign.Dot ? fill : line);
            return;
        }

        canvas.Save();
        canvas.Translate(x, y);
        canvas.DrawPath(path, s.Sign == Sign.Diamond ? fill : line);
        canvas.Restore();
    }

    private static void PaintWords(WordsShape w, SKCanvas canvas)
    {
        using var font = Fonts.At((float)w.Size);
        using var paint = new SKPaint { Color = Ink, IsAntialias = true };
        var align = w.Anchor switch { "middle" => SKTextAlign.Center, "end" => SKTextAlign.Right, _ => SKTextAlign.Left };
        canvas.DrawText(w.Text, (float)w.X, (float)w.Y, align, font, paint);
    }

    private static SKPaint Stroke(double thick, float[]? dashes) => new()
    {
        Color = Ink,
        IsAntialias = true,
        Style = SKPaintStyle.Stroke,
        StrokeWidth = (float)thick,
        PathEffect = dashes is null ? null : SKPathEffect.CreateDash(dashes, 0),
    };
}
