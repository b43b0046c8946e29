using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;

namespace RebuildApi.Server.Requests.Shapes;

/// <summary>Works out, once for each request record, how it is read. The record's constructor is the whole declaration.</summary>
public sealed class ShapeBook
{
    private readonly ConcurrentDictionary<Type, Shape> _records = new();

    /// <summary>The shape of a request record.</summary>
    public Shape Of(Type record) => _records.GetOrAdd(record, Make);

    /// <summary>Whether a field may be left out: it has a default, or may be null.</summary>
    public static bool IsOptional(ParameterInfo parameter) =>
        parameter.HasDefaultValue || new NullabilityInfoContext().Create(parameter).WriteState == NullabilityState.Nullable;

    private ObjectShape Make(Type record)
    {
        var constructor = record.GetConstructors().MaxBy(c => c.GetParameters().Length)!;
        return new ObjectShape(constructor, [.. constructor.GetParameters().Select(FieldOf)]);
    }

    private Field FieldOf(ParameterInfo parameter)
    {
        var type = Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType;
        var name = JsonNamingPolicy.CamelCase.ConvertName(parameter.Name!);
        return new Field(name, ShapeOf(type, parameter), !IsOptional(parameter), parameter.HasDefaultValue ? parameter.DefaultValue : null);
    }

    private Shape ShapeOf(Type type, ParameterInfo parameter)
    {
        var rule = parameter.GetCustomAttributes<FieldRule>().FirstOrDefault(r => r is not EntriesAttribute);
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ImmutableArray<>))
            return ListOf(type.GetGenericArguments()[0], parameter);
        if (type == typeof(SentQuantity))
            return new QuantityShape(Of(type), parameter.GetCustomAttribute<OfAttribute>());
        if (type == typeof(IReadOnlyDictionary<string, string>))
            return new MapShape(new TextShape(WordsAttribute.Plain), EntriesAttribute.Plain);
        return type.IsEnum ? new WordShape(type) : Scalar(type, rule) ?? Of(type);
    }

    private Shape ListOf(Type entry, ParameterInfo parameter)
    {
        var shape = ShapeOf(entry, parameter);
        var entries = parameter.GetCustomAttribute<EntriesAttribute>() ?? EntriesAttribute.Plain;
        return (Shape)Activator.CreateInstance(typeof(ListShape<>).MakeGenericType(entry), shape, entries)!;
    }

    private static Shape? Scalar(Type type, FieldRule? rule) => Type.GetTypeCode(type) switch
    {
        TypeCode.String => new TextShape(rule ?? WordsAttribute.Plain),
        TypeCode.Boolean => new TruthShape(),
        TypeCode.Int32 => new WholeShape(rule),
        TypeCode.Decimal => new DecimalShape(rule),
        _ when type == typeof(SentNumber) => new SentNumberShape(),
        _ when type == typeof(DateTimeOffset) => new MomentShape(),
        _ when type == typeof(DateOnly) => new DayShape(),
        _ => null,
    };
}
