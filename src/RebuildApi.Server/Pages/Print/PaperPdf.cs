using SkiaSharp;

namespace RebuildApi.Server.Pages;

/// <summary>A paper as PDF, made here: no browser, no fonts of the machine, nothing from elsewhere.</summary>
public sealed class PaperPdf(Paper paper, PageWords words, DateTimeOffset made)
{
    private const float Body = 9;

    /// <summary>The document.</summary>
    public byte[] Write()
    {
        using var sheets = new Sheets();
        Paragraph(sheets, paper.Title, 15, true, 8);
        foreach (var block in paper.Blocks)
            Put(block, sheets);
        return sheets.Pdf(paper.Title, made, (n, of) => words["print.foot", ("title", Short(paper.Title)), ("n", Count(n)), ("of", Count(of))]);
    }

    private static void Put(Block block, Sheets sheets)
    {
        switch (block)
        {
            case Heading h:
                sheets.Need(60);
                sheets.Y += 6;
                Paragraph(sheets, h.Text, 11, true, 4);
                break;
            case Prose p:
                Paragraph(sheets, p.Text, p.IsSoft ? Body - 1 : Body, false, 5);
                break;
            case Bullets b:
                foreach (var item in b.Items)
                    Paragraph(sheets, "•  " + item, Body, false, 2);
                sheets.Y += 4;
                break;
            case Picture p:
                Draw(p.Drawing, sheets);
                break;
            case Signatures s:
                Sign(s, sheets);
                break;
            case Grid { Rows.IsEmpty: true } g:
                Paragraph(sheets, g.Empty, Body, false, 5);
                break;
            case Grid g:
                new PdfTable(g, sheets).Print();
                break;
        }
    }

    private static void Paragraph(Sheets sheets, string text, float size, bool bold, float after)
    {
        using var font = Fonts.At(size, bold);
        foreach (var line in Ink.Lines(text, font, Sheets.Width))
        {
            sheets.Need(size * 1.35f);
            sheets.Y += size * 1.3f;
            Ink.Line(sheets.Canvas, line, Sheets.Left, sheets.Y - size * 0.3f, size, bold);
        }

        sheets.Y += after;
    }

    private static void Draw(Drawn drawing, Sheets sheets)
    {
        var scale = Math.Min(Sheets.Width / (float)drawing.Sketch.Width, Sheets.Most / (float)drawing.Height);
        sheets.Need((float)drawing.Height * scale);
        sheets.Canvas.Save();
        sheets.Canvas.Translate(Sheets.Left, sheets.Y);
        sheets.Canvas.Scale(scale);
        Painter.Paint(drawing, sheets.Canvas);
        sheets.Canvas.Restore();
        sheets.Y += (float)drawing.Height * scale + 8;
    }

    private static void Sign(Signatures s, Sheets sheets)
    {
        const float gap = 24, deep = 46;
        var wide = (Sheets.Width - gap) / 2;
        sheets.Need((s.Words.Length + 1) / 2 * deep);
        for (var i = 0; i < s.Words.Length; i++)
        {
            var x = Sheets.Left + i % 2 * (wide + gap);
            var y = sheets.Y + i / 2 * deep + 32;
            Ink.Rule(sheets.Canvas, x, x + wide, y);
            Ink.Line(sheets.Canvas, s.Words[i], x, y + 10, 8);
        }

        sheets.Y += (s.Words.Length + 1) / 2 * deep + 6;
    }

    private static string Short(string title) => title.Length <= 80 ? title : title[..79] + "…";

    private static string Count(int n) => n.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
