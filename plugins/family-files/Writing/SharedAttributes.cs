using System.Text.Json;

namespace FamilyFiles.Writing;

/// <summary>Attributes that several kinds ask for in the same words, and are therefore declared once.</summary>
internal sealed class SharedAttributes
{
    private readonly ImmutableDictionary<string, string> _shared;

    public SharedAttributes(ImmutableArray<PartKind> kinds)
    {
        var groups = kinds.SelectMany(k => k.Attributes).GroupBy(a => (a.Id, Text: TextOf(a))).Where(g => g.Count() > 1).DistinctBy(g => g.Key.Id).ToList();
        _shared = groups.ToImmutableDictionary(g => g.Key.Id, g => g.Key.Text, StringComparer.Ordinal);
        All = [.. groups.Select(g => g.First())];
    }

    public ImmutableArray<AttributeDefinition> All { get; }

    public bool Has(AttributeDefinition attribute) => _shared.TryGetValue(attribute.Id, out var text) && text == TextOf(attribute);

    private static string TextOf(AttributeDefinition attribute) => JsonSerializer.Serialize(attribute, ContractJson.Default.AttributeDefinition);
}
