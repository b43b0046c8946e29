using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Composition;

/// <summary>Holds a complaint against the symptoms that the family knows.</summary>
public static class ComplaintCheck
{
    /// <summary>The complaint; what the family does not know is complained of.</summary>
    public static ImmutableArray<SymptomSeen> Read(ImmutableArray<SymptomRequest>? sent, FamilyIndex family, Complaints complaints)
    {
        if (sent is not { } symptoms)
            return [];
        for (var i = 0; i < symptoms.Length; i++)
            Check(symptoms[i], Pointer.Entry("/complaint", i), family, complaints);
        return [.. symptoms.Select(s => s.ToContract())];
    }

    private static void Check(SymptomRequest sent, string pointer, FamilyIndex family, Complaints complaints)
    {
        var known = family.Family.Symptoms.FirstOrDefault(s => s.Id == sent.Symptom);
        if (known is null)
        {
            complaints.AddUnknown(pointer + "/symptom", FieldProblems.UnknownSymptom, $"The family has no symptom {sent.Symptom}.", sent.Symptom, [.. family.Family.Symptoms.Select(s => s.Id)]);
            return;
        }

        if (sent.Gear is { } gear && !known.Gears.Contains(gear))
            complaints.AddUnknown(pointer + "/gear", FieldProblems.UnknownGear, $"The symptom {sent.Symptom} is not one of gear {gear}.", gear, known.Gears);
    }
}
