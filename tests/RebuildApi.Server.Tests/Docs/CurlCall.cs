using System.Text.RegularExpressions;

namespace RebuildApi.Server.Tests.Docs;

/// <summary>One curl line of a document with the output shown under it.</summary>
public sealed record CurlCall(string Line, HttpMethod Method, string Path, string? Body, (string Name, string Value)[] Headers, string Shown)
{
    private const string Address = "http://127.0.0.1:5280";

    /// <summary>Every call in the console blocks of a document, in order.</summary>
    public static IEnumerable<CurlCall> In(string markdown) =>
        from Match block in Regex.Matches(markdown, "```console\n(.*?)```", RegexOptions.Singleline)
        from call in block.Groups[1].Value.Split("$ ", StringSplitOptions.RemoveEmptyEntries)
        where call.StartsWith("curl", StringComparison.Ordinal)
        select Parse(call);

    /// <summary>Whether an answer is what the document shows; an ellipsis stands for anything, white space for nothing.</summary>
    public bool Shows(string answer)
    {
        var pattern = string.Join(".*?", Squeezed(Shown).Split('…').Select(Regex.Escape));
        return Regex.IsMatch(Squeezed(answer), "^" + pattern + "$", RegexOptions.Singleline);
    }

    private static CurlCall Parse(string text)
    {
        var call = text.Replace("\\\n", " ", StringComparison.Ordinal);
        var end = call.IndexOf('\n', StringComparison.Ordinal);
        var (line, shown) = (call[..end], call[(end + 1)..]);
        var words = Regex.Matches(line, "'([^']*)'|\"([^\"]*)\"|(\\S+)").Select(m => m.Groups[1].Value + m.Groups[2].Value + m.Groups[3].Value).ToArray();
        var headers = After(words, "-H").Select(h => h.Split(": ", 2)).Select(h => (h[0], h[1])).ToArray();
        var body = After(words, "-d").SingleOrDefault();
        var path = words.Single(w => w.StartsWith(Address, StringComparison.Ordinal))[Address.Length..];
        return new CurlCall(line, body is null ? HttpMethod.Get : HttpMethod.Post, path, body, headers, shown);
    }

    private static IEnumerable<string> After(string[] words, string option) =>
        words.Zip(words.Skip(1)).Where(pair => pair.First == option).Select(pair => pair.Second);

    private static string Squeezed(string text) => Regex.Replace(text, "\\s+", "");
}
