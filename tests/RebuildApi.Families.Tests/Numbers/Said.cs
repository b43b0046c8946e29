using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace RebuildApi.Families.Tests;

/// <summary>
/// An answer as text, without what only repeats the family: a limit that is merely echoed does not count as an answer. The limits of a cure's step are no
/// echo: they say which part to order.
/// </summary>
internal static class Said
{
    private static readonly HashSet<Type> s_echoes =
    [
        typeof(Limits), typeof(RuleIdentity), typeof(Cause), typeof(Symptom), typeof(Operation), typeof(ImmutableArray<Operation>), typeof(Series), typeof(ClearanceLoop),
    ];

    private static readonly JsonSerializerOptions s_json = new()
    {
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        IncludeFields = true,
        TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { LeaveOutEchoes } },
    };

    public static string Of<T>(T answer) => JsonSerializer.Serialize(answer, s_json);

    private static void LeaveOutEchoes(JsonTypeInfo type)
    {
        foreach (var property in type.Properties.Where(p => (type.Type != typeof(CureStep) && s_echoes.Contains(p.PropertyType)) || p.Name == "InputsSha256"))
            property.ShouldSerialize = (_, _) => false;
    }
}
