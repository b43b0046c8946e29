using RebuildApi.Checkers.Plans;
using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Pairings;

/// <summary>One rule put to one part in each of its places.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Values">What is known of the unit.</param>
/// <param name="Places">Role to place.</param>
internal sealed record CheckedCase(PairingRule Rule, CheckedValues Values, IReadOnlyDictionary<string, CheckedPlace> Places)
{
    public IEnumerable<string> Roles => Places.Keys.Order(StringComparer.Ordinal);

    public bool Has(string role) => Places.ContainsKey(role);

    public string? Option(string name) => Rule.Options.GetValueOrDefault(name);

    public string[] List(string name) => (Option(name) ?? "").Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    public double? Number(string name) => CheckedValue.Number(Rule.Parameters.GetValueOrDefault(name));

    public Component? Part(string role) => Places.TryGetValue(role, out var at) ? Values.Unit.At(at.Position, at.Index) : null;

    /// <summary>What a rule calls by a plain name, as the part calls it: by an option of the rule, else with the feature of the role before it.</summary>
    public string NameAt(string role, string name) => Option($"{role}.{name}") ?? (Places[role].Feature is { } feature ? $"{feature}.{name}" : name);

    public string? See(string role, string name) => Part(role) is { } part ? Values.Unit.AttributeOf(part, NameAt(role, name)) : null;

    public bool Declares(string role, string name) => Has(role) && Values.Unit.CharacteristicAt(Places[role].Position, NameAt(role, name)) is not null;

    /// <summary>A value that counts: enough readings, what follows from others, or the drawing of a part that is new.</summary>
    public CheckedValue? Read(string role, string name)
    {
        if (Part(role) is not { } part || Values.Unit.CharacteristicAt(Places[role].Position, NameAt(role, name)) is not { } wanted)
            return null;
        var value = Values.At(Places[role].Position, Places[role].Index, wanted.Id);
        return value?.From switch
        {
            EstimateBasis.Measured when Values.ReadingsAt(part, wanted).Count < wanted.MinimumReadings => null,
            EstimateBasis.Drawing when part.Origin != Origin.New => null,
            _ => value,
        };
    }

    public ToothSet? TeethOf(string role)
    {
        if (!Has(role))
            return null;
        var teeth = Values.Unit.KindOf(Places[role].Position).ToothSets;
        return teeth.FirstOrDefault(t => t.Id == (Places[role].Feature ?? "")) ?? (teeth.Length == 1 ? teeth[0] : null);
    }

    public Compatibility Broken => Rule.WhenBroken == Compatibility.Conditional ? Compatibility.Conditional : Compatibility.Incompatible;
}

/// <summary>Where a role points to.</summary>
internal sealed record CheckedPlace(string Position, string? Feature, int Index);
