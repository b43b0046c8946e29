using System.Globalization;
using System.Text;
using QRCoder;

namespace RebuildApi.Server.Pages;

/// <summary>A label as a drawing: the QR code of its code (ISO/IEC 18004, a quarter of it may be lost), the code in letters, and what it stands on.</summary>
/// <param name="code">What is printed and scanned.</param>
/// <param name="words">What it stands on.</param>
public sealed class LabelDrawing(string code, string words)
{
    private const double Module = 4;

    /// <summary>The drawing; a browser prints it at about 50 mm across.</summary>
    public string Document()
    {
        using var data = QRCodeGenerator.GenerateQrCode(code, QRCodeGenerator.ECCLevel.Q);
        var rows = data.ModuleMatrix;
        var side = rows.Count * Module;
        var squares = new StringBuilder();
        for (var y = 0; y < rows.Count; y++)
        {
            for (var x = 0; x < rows.Count; x++)
            {
                if (rows[y][x])
                    squares.Append(CultureInfo.InvariantCulture, $"M{x} {y}h1v1h-1z");
            }
        }

        return string.Create(CultureInfo.InvariantCulture, $"""
            <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {side + 130} {side}" width="50mm" role="img" font-family="system-ui, sans-serif"><title>{Page.Safe(code)}</title><rect width="100%" height="100%" fill="#ffffff"/><path transform="scale({Module})" d="{squares}" fill="#000000"/><text x="{side}" y="{side / 2}" font-size="28" font-weight="700">{Page.Safe(code)}</text><text x="{side}" y="{(side / 2) + 24}" font-size="13">{Page.Safe(words.Length > 20 ? words[..20] : words)}</text></svg>
            """);
    }
}
