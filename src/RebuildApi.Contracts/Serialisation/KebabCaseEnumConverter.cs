using System.Text.Json;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>Writes an enum value in lower case with hyphens (<c>not-assessed</c>) and reads nothing else.</summary>
/// <typeparam name="T">The enum.</typeparam>
public sealed class KebabCaseEnumConverter<T>() : JsonStringEnumConverter<T>(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false)
    where T : struct, Enum;
