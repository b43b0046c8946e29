using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text.Json;
using RebuildApi.Server.Json;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Results;

/// <summary>One column of a table.</summary>
/// <param name="Name">Its name, dotted for parts of parts.</param>
/// <param name="IsNumber">Whether it holds numbers, which are never guarded.</param>
/// <param name="Read">Its text for one row; null when it is empty.</param>
public sealed record Column<T>(string Name, bool IsNumber, Func<T, string?> Read);

/// <summary>Works out the columns of a record: one for each simple member, those of parts with the part's name before them.</summary>
public static class Columns
{
    private const int Deepest = 4;

    /// <summary>The columns, in the order of the record's constructor.</summary>
    public static IEnumerable<Column<T>> Of<T>() => Under<T>(typeof(T), "", x => x, 0);

    private static IEnumerable<Column<T>> Under<T>(Type type, string prefix, Func<T, object?> read, int depth) => Ordered(type)
        .SelectMany(p => OfMember<T>(p, prefix + JsonNamingPolicy.CamelCase.ConvertName(p.Name), x => read(x) is { } owner ? p.GetValue(owner) : null, depth));

    private static IEnumerable<PropertyInfo> Ordered(Type type)
    {
        var names = type.GetConstructors().MaxBy(c => c.GetParameters().Length)!.GetParameters().Select(p => p.Name).ToList();
        return type.GetProperties().Where(p => names.Contains(p.Name)).OrderBy(p => names.IndexOf(p.Name));
    }

    private static IEnumerable<Column<T>> OfMember<T>(PropertyInfo property, string name, Func<T, object?> read, int depth)
    {
        var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        if (type == typeof(QuantityWire))
            return [new(name, true, x => (read(x) as QuantityWire)?.Value.Text), new(name + "Unit", false, x => (read(x) as QuantityWire)?.Unit)];
        if (IsPart(type) && depth < Deepest)
            return Under(type, name + ".", read, depth + 1);
        return [new(name, IsNumber(type), x => TextOf(read(x)))];
    }

    private static bool IsPart(Type type) =>
        type is { IsClass: true, Namespace: { } space } && space.StartsWith("RebuildApi.Server", StringComparison.Ordinal);

    private static bool IsNumber(Type type) =>
        type == typeof(int) || type == typeof(long) || type == typeof(decimal) || type == typeof(double) || type == typeof(SentNumber);

    private static string? TextOf(object? value) => value switch
    {
        null => null,
        string text => text,
        bool truth => truth ? "true" : "false",
        SentNumber number => number.Text,
        DateTimeOffset moment => moment.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'", CultureInfo.InvariantCulture),
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        Enum word => JsonNamingPolicy.KebabCaseLower.ConvertName(word.ToString()),
        IReadOnlyDictionary<string, string> pairs => string.Join("; ", pairs.Select(p => $"{p.Key}={p.Value}")),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        IEnumerable many and not IDictionary => string.Join("; ", many.Cast<object>().Select(Entry)),
        _ => JsonSerializer.Serialize(value, value.GetType(), WireJson.Options),
    };

    private static string Entry(object entry) => entry switch
    {
        string text => text,
        IInWords words => words.InWords(),
        _ => JsonSerializer.Serialize(entry, entry.GetType(), WireJson.Options),
    };
}
