using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace RebuildApi.Storage.Sql.Personal;

/// <summary>Takes the personal texts out of a body before it is linked into the chain, and puts them back when it is read.</summary>
internal static class PersonalBody
{
    /// <summary>A body with seals in the place of its personal texts, and those texts; the body as it is and null when it has none.</summary>
    public static (string Body, string? Personal) Close(string kind, string body)
    {
        var fields = PersonalFields.Of(kind);
        if (fields.IsEmpty)
            return (body, null);
        var json = JsonNode.Parse(body)!.AsObject();
        var texts = Texts(json, fields).Where(t => t.Value != Erasure.Text).ToImmutableSortedDictionary(t => t.Key, t => Seal.New(t.Value), StringComparer.Ordinal);
        if (texts.IsEmpty)
            return (body, null);
        foreach (var (field, text) in texts)
            json[field] = Seal.Of(text);
        return (json.ToJsonString(), JsonSerializer.Serialize(texts, StoreJson.Default.ImmutableSortedDictionaryStringSealedText));
    }

    /// <summary>A body as it was sent; a text that was erased reads as <see cref="Erasure.Text"/>.</summary>
    public static string Open(string kind, string body, string? personal)
    {
        var fields = PersonalFields.Of(kind);
        if (fields.IsEmpty || body.Length == 0 || (personal is null && !body.Contains("\"sealed:", StringComparison.Ordinal)))
            return body;
        var json = JsonNode.Parse(body)!.AsObject();
        var texts = Read(personal);
        foreach (var (field, value) in Texts(json, fields).Where(t => Seal.Is(t.Value)).ToArray())
            json[field] = texts.TryGetValue(field, out var text) && Seal.Of(text) == value ? text.Text : Erasure.Text;
        return json.ToJsonString();
    }

    /// <summary>The personal texts of a body, by field; nothing where a field is empty.</summary>
    public static IEnumerable<KeyValuePair<string, string>> Texts(JsonObject json, ImmutableArray<string> fields)
    {
        foreach (var field in fields)
        {
            if (json[field] is JsonValue value && value.GetValueKind() == JsonValueKind.String)
                yield return new(field, value.GetValue<string>());
        }
    }

    /// <summary>The texts of a row; none when there is no row.</summary>
    public static ImmutableSortedDictionary<string, SealedText> Read(string? personal) => personal is null
        ? ImmutableSortedDictionary<string, SealedText>.Empty
        : JsonSerializer.Deserialize(personal, StoreJson.Default.ImmutableSortedDictionaryStringSealedText)!;
}
