using System.Text.Json;

namespace RebuildApi.Server.Wire;

/// <summary>Words for the values of an enum.</summary>
public static class Kebab
{
    /// <summary>In lower case with hyphens: <c>nothing-fits</c>.</summary>
    public static string Of<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());
}
