using System.Globalization;

namespace RebuildApi.Server.Requests;

/// <summary>Builds JSON pointers (RFC 6901).</summary>
public static class Pointer
{
    /// <summary>A member of an object.</summary>
    public static string Member(string parent, string name) =>
        parent + "/" + name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);

    /// <summary>An entry of a list.</summary>
    public static string Entry(string parent, int index) => parent + "/" + index.ToString(CultureInfo.InvariantCulture);
}
