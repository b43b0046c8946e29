using System.Reflection;
using System.Text.Json;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests.Shapes;

/// <summary>A record, read member by member into its constructor.</summary>
public sealed class ObjectShape(ConstructorInfo constructor, IReadOnlyList<Field> fields) : Shape
{
    private readonly string[] _names = [.. fields.Select(f => f.Name)];

    /// <inheritdoc/>
    public override object? Read(JsonElement json, string pointer, Complaints complaints)
    {
        if (json.ValueKind == JsonValueKind.Number && _names.Contains("unit", StringComparer.Ordinal))
            return Bare(json.GetRawText(), pointer, complaints);
        if (json.ValueKind != JsonValueKind.Object)
            return Wrong(json, pointer, complaints, "an object");
        var before = complaints.Count;
        var members = Members.Of(json, pointer, complaints);
        RefuseUnknown(members.Keys, pointer, complaints);
        var arguments = fields.Select(f => ReadField(f, members, pointer, complaints)).ToArray();
        return complaints.Count == before ? constructor.Invoke(arguments) : null;
    }

    private static object? Bare(string number, string pointer, Complaints complaints)
    {
        var fix = $"Send {{ \"value\": {number}, \"unit\": \"mm\" }}, with the unit it was read in.";
        complaints.Add(pointer, FieldProblems.BareNumber, "A number without its unit is refused.", number, null, fix);
        return null;
    }

    private void RefuseUnknown(IEnumerable<string> sent, string pointer, Complaints complaints)
    {
        foreach (var name in sent.Except(_names, StringComparer.Ordinal))
            complaints.AddUnknown(Pointer.Member(pointer, name), FieldProblems.UnknownField, $"There is no field {name} here.", name, _names);
    }

    private static object? ReadField(Field field, Dictionary<string, JsonElement> members, string pointer, Complaints complaints)
    {
        var at = Pointer.Member(pointer, field.Name);
        if (!members.TryGetValue(field.Name, out var value))
        {
            if (field.Required)
                complaints.Add(at, FieldProblems.MissingField, $"The field {field.Name} is missing.");
            return field.Default;
        }

        if (value.ValueKind == JsonValueKind.Null && !field.Required)
            return field.Default;
        return field.Shape.Read(value, at, complaints);
    }
}

/// <summary>One field of a record.</summary>
/// <param name="Name">Its name in JSON.</param>
/// <param name="Shape">How it is read.</param>
/// <param name="Required">Whether it must be sent.</param>
/// <param name="Default">What stands when it is not.</param>
public sealed record Field(string Name, Shape Shape, bool Required, object? Default);
