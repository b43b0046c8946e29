using System.Collections.Immutable;

namespace RebuildApi.Server.Composition.Attachments;

/// <summary>A sort of file that is taken as an attachment, known by its content and never by its name.</summary>
/// <param name="MediaType">Its media type.</param>
/// <param name="Suffix">What its name ends with when it is saved.</param>
/// <param name="IsShown">Whether a browser may show it in place; anything else is saved.</param>
public sealed record FileSort(string MediaType, string Suffix, bool IsShown)
{
    private static readonly FileSort Jpeg = new("image/jpeg", "jpg", true);
    private static readonly FileSort Png = new("image/png", "png", true);
    private static readonly FileSort Webp = new("image/webp", "webp", true);
    private static readonly FileSort Heic = new("image/heic", "heic", false);
    private static readonly FileSort Pdf = new("application/pdf", "pdf", false);

    // Brands of ISO/IEC 23008-12 for still pictures coded with HEVC, and the general one.
    private static readonly ImmutableArray<string> HeicBrands = ["heic", "heix", "heim", "heis", "mif1"];

    /// <summary>Every sort.</summary>
    public static ImmutableArray<FileSort> All { get; } = [Jpeg, Png, Webp, Heic, Pdf];

    /// <summary>The sort of a media type that was recorded.</summary>
    public static FileSort Named(string mediaType) => All.First(s => s.MediaType == mediaType);

    /// <summary>The sort of a content; null when it is none of these.</summary>
    public static FileSort? Of(ReadOnlySpan<byte> content) =>
        content.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]) ? Jpeg
        : content.StartsWith((ReadOnlySpan<byte>)[0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]) && At(content, 12, "IHDR") ? Png
        : At(content, 0, "RIFF") && At(content, 8, "WEBP") ? Webp
        : At(content, 4, "ftyp") && IsHeic(content) ? Heic
        : At(content, 0, "%PDF-") ? Pdf
        : null;

    private static bool IsHeic(ReadOnlySpan<byte> content)
    {
        foreach (var brand in HeicBrands)
        {
            if (At(content, 8, brand))
                return true;
        }

        return false;
    }

    private static bool At(ReadOnlySpan<byte> content, int offset, string word)
    {
        if (content.Length < offset + word.Length)
            return false;
        for (var i = 0; i < word.Length; i++)
        {
            if (content[offset + i] != word[i])
                return false;
        }

        return true;
    }
}
