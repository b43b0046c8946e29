using FamilyFiles.Yaml;

namespace FamilyFiles.Forms;

/// <summary>A named field of an entry.</summary>
internal interface IField
{
    string Name { get; }

    bool IsNeeded { get; }

    /// <summary>What it is for, in plain words.</summary>
    string Words { get; }

    object? Read(Node node, Place place, FileReading reading);

    JsonObject Schema(SchemaBook book);
}

/// <summary>A named field of an entry, and what it is when it is left out.</summary>
/// <param name="Name">Its name in the file.</param>
/// <param name="ContractName">Its name in the contract; empty when it stands for the entry itself.</param>
/// <param name="Form">What may stand there.</param>
/// <param name="IsNeeded">Whether it must be there.</param>
/// <param name="Usual">What it is when it is left out.</param>
/// <param name="Words">What it is for, in plain words.</param>
internal sealed record Field<T>(string Name, string ContractName, Form<T> Form, bool IsNeeded, T Usual, string Words) : IField
{
    public object? Read(Node node, Place place, FileReading reading)
    {
        var here = place.Member(Name, ContractName);
        reading.Mark(node, here);
        return Form.Read(node, here, reading);
    }

    public JsonObject Schema(SchemaBook book)
    {
        var schema = Form.Schema(book);
        schema["description"] = Words;
        return schema;
    }
}

/// <summary>The fields that were there.</summary>
internal sealed class Got(IReadOnlyDictionary<IField, object?> values)
{
    public T Of<T>(Field<T> field) => values.TryGetValue(field, out var value) ? (T)value! : field.Usual;

    public bool Has(IField field) => values.ContainsKey(field);
}
