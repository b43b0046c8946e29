using RebuildApi.Contracts;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Composition;

/// <summary>Holds attributes and damage classes against the closed lists of a kind.</summary>
public static class AttributeCheck
{
    /// <summary>Complains of an attribute that the kind has not, or a value that is not on its list.</summary>
    public static void Check(PartKind kind, string attribute, string value, string idPointer, string valuePointer, Complaints complaints)
    {
        var known = kind.Attributes.FirstOrDefault(a => a.Id == attribute);
        if (known is null)
            complaints.AddUnknown(idPointer, FieldProblems.UnknownAttribute, $"A {kind.Id} has no attribute {attribute}.", attribute, [.. kind.Attributes.Select(a => a.Id)]);
        else if (!known.Values.Any(v => v.Id == value))
            complaints.AddUnknown(valuePointer, FieldProblems.NotAllowed, $"{value} is not a value of {attribute}. Unknown is not a value: leave it out.", value, [.. known.Values.Select(v => v.Id)]);
    }

    /// <summary>Complains of a damage class that the family does not look for on the kind.</summary>
    public static void CheckDamage(PartKind kind, string damage, string pointer, Complaints complaints)
    {
        if (!kind.DamageClasses.Contains(damage))
            complaints.AddUnknown(pointer, FieldProblems.UnknownDamage, $"The family does not look for {damage} on a {kind.Id}.", damage, kind.DamageClasses);
    }
}
