using System.Collections;
using System.Collections.Immutable;
using System.Reflection;

namespace RebuildApi.Contracts.Tests;

/// <summary>Makes one record of any type of the contract with every value present and none of them the default, so that a loss shows.</summary>
internal static class SampleRecord
{
    /// <summary>Every record of the contract.</summary>
    public static IEnumerable<Type> Types => typeof(Family).Assembly.GetExportedTypes()
        .Where(t => !t.IsAbstract && !t.IsInterface && (t.GetMethod("<Clone>$") is not null || t == typeof(Length)));

    /// <summary>A sample of a type.</summary>
    public static object Of(Type type)
    {
        if (Nullable.GetUnderlyingType(type) is { } inner)
            return Of(inner);
        if (type.IsEnum)
            return Enum.GetValues(type).Cast<object>().Last();
        if (type.IsGenericType)
            return Collection(type);
        return Plain(type) ?? Made(type.IsAbstract ? Types.First(t => t.BaseType == type) : type);
    }

    private static object? Plain(Type type) => type switch
    {
        _ when type == typeof(string) => "sample \"é\" \u0001",
        _ when type == typeof(int) => 7,
        _ when type == typeof(long) => long.MaxValue,
        _ when type == typeof(double) => 0.1,
        _ when type == typeof(decimal) => 12.50m,
        _ when type == typeof(bool) => true,
        _ when type == typeof(DateOnly) => new DateOnly(2026, 3, 2),
        _ when type == typeof(DateTimeOffset) => new DateTimeOffset(2026, 3, 2, 12, 0, 0, TimeSpan.Zero).AddTicks(1),
        _ => null,
    };

    private static object Collection(Type type)
    {
        var arguments = type.GetGenericArguments();
        return arguments.Length == 1 ? Array(arguments[0]) : Map(arguments[1]);
    }

    private static object Array(Type item)
    {
        var items = System.Array.CreateInstance(item, 1);
        items.SetValue(Of(item), 0);
        return typeof(ImmutableArray).GetMethods().Single(IsCreateFromArray).MakeGenericMethod(item).Invoke(null, [items])!;
    }

    private static bool IsCreateFromArray(MethodInfo method) =>
        method is { Name: nameof(ImmutableArray.Create) } && method.GetParameters() is [{ ParameterType.IsArray: true }];

    private static object Map(Type value)
    {
        var map = (IDictionary)Activator.CreateInstance(typeof(Dictionary<,>).MakeGenericType(typeof(string), value))!;
        map.Add("key", Of(value));
        return map;
    }

    private static object Made(Type type)
    {
        var constructor = type.GetConstructors().MaxBy(c => c.GetParameters().Length)!;
        var parameters = constructor.GetParameters();
        var made = constructor.Invoke([.. parameters.Select(p => Of(p.ParameterType))]);
        foreach (var property in type.GetProperties().Where(p => p.SetMethod is { IsStatic: false } && parameters.All(q => q.Name != p.Name)))
            property.SetValue(made, Of(property.PropertyType));
        return made;
    }
}
