using System.Collections.Immutable;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;

namespace RebuildApi.Server.Pages;

/// <summary>
/// The languages that the pages can be shown in: English, and one for each file of words in <c>words</c> in the data folder (<c>de.txt</c>). A person gets
/// the shop's language when it is set, or else the one that the browser asks for first (RFC 9110, 12.5.4). Words that a file lacks stay English.
/// </summary>
public sealed class Tongues
{
    private readonly ImmutableSortedDictionary<string, PageWords> _all;
    private readonly string? _fixed;

    /// <summary>Reads the files.</summary>
    public Tongues(IOptions<ServerOptions> options)
    {
        var folder = Path.Combine(options.Value.DataFolder, "words");
        var brought = Directory.Exists(folder) ? Directory.GetFiles(folder, "*.txt").Order(StringComparer.Ordinal) : Enumerable.Empty<string>();
        _fixed = options.Value.Language;
        _all = brought.Select(f => PageWords.Parse(Path.GetFileNameWithoutExtension(f), File.ReadAllText(f), PageWords.English))
            .Append(PageWords.English).DistinctBy(w => w.Language, StringComparer.OrdinalIgnoreCase)
            .ToImmutableSortedDictionary(w => w.Language, w => w, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>The words for who asks.</summary>
    public PageWords For(HttpContext http)
    {
        if (_fixed is { } one)
            return Find(one) ?? PageWords.English;
        var wanted = http.Request.GetTypedHeaders().AcceptLanguage.OrderByDescending(l => l, StringWithQualityHeaderValueComparer.QualityComparer);
        return wanted.Select(l => Find(l.Value.ToString())).FirstOrDefault(w => w is not null) ?? PageWords.English;
    }

    private PageWords? Find(string tag) => _all.GetValueOrDefault(tag) ?? _all.GetValueOrDefault(tag.Split('-')[0]);
}
