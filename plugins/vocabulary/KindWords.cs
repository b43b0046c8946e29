namespace FamilyWords;

/// <summary>Words for a sort of part.</summary>
internal static class KindWords
{
    public static PartKind Kind(string id, string name) => new(id, Text.English($"kind.{id}", name), [], [], [], [], null, false);

    public static PartKind Made(this PartKind kind, string material) => kind with { Material = material };

    public static PartKind SingleUse(this PartKind kind) => kind with { SingleUse = true };

    /// <summary>What is read on it; the words get the kind's own key, since two kinds may share an id.</summary>
    public static PartKind Measures(this PartKind kind, params Characteristic[] characteristics) => kind with
    {
        Characteristics = [.. kind.Characteristics, .. characteristics.Select(c => c with { Name = c.Name with { Key = $"{kind.Id}.{c.Id}" } })],
    };

    /// <summary>What is seen on it.</summary>
    public static PartKind Shows(this PartKind kind, params AttributeDefinition[] attributes) => kind with { Attributes = [.. kind.Attributes, .. attributes] };

    /// <summary>The damage to rule out or to name.</summary>
    public static PartKind LookFor(this PartKind kind, params string[] damage) => kind with { DamageClasses = [.. kind.DamageClasses, .. damage] };

    public static PartKind Carries(this PartKind kind, params ToothSet[] teeth) => kind with { ToothSets = [.. kind.ToothSets, .. teeth] };

    /// <summary>A question with a closed list of answers, each as <c>id: words</c>.</summary>
    public static AttributeDefinition Seen(string id, string question, params string[] values) =>
        new(id, Text.English($"attribute.{id}", question), [.. values.Select(v => Value(id, v))]);

    private static AttributeValue Value(string attribute, string idAndWords)
    {
        var parts = idAndWords.Split(": ", 2);
        return new AttributeValue(parts[0], Text.English($"attribute.{attribute}.{parts[0]}", parts[^1]));
    }
}
