using System.Security.Cryptography;
using System.Text;

namespace RebuildApi.Server.Pages;

/// <summary>The few files that pages are made of, which lie inside the program.</summary>
public static class PageAssets
{
    /// <summary>One file, with line ends as a browser sees them.</summary>
    public static string Text(string name)
    {
        using var stream = Open(name);
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().Replace("\r\n", "\n", StringComparison.Ordinal);
    }

    /// <summary>A script without its comments and indents: a page is sent whole each time, and a bench may hang on a weak line.</summary>
    public static string Script(string name) => string.Join('\n', Text(name).Split('\n').Select(line => line.TrimStart()).Where(line => !line.StartsWith("//", StringComparison.Ordinal)));

    /// <summary>One file as it lies there.</summary>
    public static byte[] Bytes(string name)
    {
        using var stream = Open(name);
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }

    /// <summary>What the content security policy says of a text that stands in a page (CSP Level 3, 2.3.1).</summary>
    public static string Source(string text) => $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}'";

    private static Stream Open(string name) => typeof(PageAssets).Assembly.GetManifestResourceStream("pages/" + name)
        ?? throw new FileNotFoundException("The program lacks one of its own files.", name);
}
