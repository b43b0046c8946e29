using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Composition;

/// <summary>Turns the members of a clearance as they were sent into what the engine sums.</summary>
public static class LoopIntake
{
    /// <summary>The members of a loop; empty with complaints.</summary>
    public static ImmutableArray<TermValue> Members(ImmutableArray<LoopMemberRequest> sent, Complaints complaints)
    {
        var read = sent.Select((m, i) => Member(m, Pointer.Entry("/terms", i), complaints)).ToImmutableArray();
        if (!sent.Any(m => m.Numerator > 0) || !sent.Any(m => m.Numerator < 0))
            complaints.Add("/terms", FieldProblems.Contradiction, "The loop is open: it needs members that open the gap (numerator above 0) and members that close it.");
        return complaints.Any ? [] : read;
    }

    /// <summary>The members of a clearance at temperature, with their materials; empty with complaints.</summary>
    public static ImmutableArray<(TermValue Term, Material Material)> Members(ThermalRequest sent, Complaints complaints)
    {
        var ids = sent.Materials.Select(m => m.Id).ToArray();
        foreach (var twice in ids.GroupBy(i => i, StringComparer.Ordinal).Where(g => g.Count() > 1))
            complaints.Add("/materials", FieldProblems.Contradiction, $"The material {twice.Key} is there twice.", twice.Key);
        foreach (var (member, i) in sent.Members.Select((m, i) => (m, i)).Where(x => !ids.Contains(x.m.Material, StringComparer.Ordinal)))
            complaints.AddUnknown($"/members/{i}/material", FieldProblems.NotAllowed, $"There is no material {member.Material} in this request.", member.Material, ids);
        var terms = sent.Members.Select((m, i) => Member(
            new(m.Name, m.Length, m.Numerator, m.Denominator, m.StandardUncertainty), Pointer.Entry("/members", i), complaints)).ToArray();
        if (complaints.Any)
            return [];
        var materials = sent.Materials.ToDictionary(m => m.Id, m => m.ToContract(), StringComparer.Ordinal);
        return [.. terms.Zip(sent.Members, (t, m) => (t, materials[m.Material]))];
    }

    private static TermValue Member(LoopMemberRequest sent, string pointer, Complaints complaints)
    {
        if (sent.Numerator == 0)
            complaints.Add(pointer + "/numerator", FieldProblems.OutOfRange, "A coefficient of 0 is no member.", "0");
        if (sent.StandardUncertainty is not null && sent.HalfWidth is not null)
            complaints.Add(pointer, FieldProblems.Contradiction, "A member was measured (standardUncertainty) or not (halfWidth), not both.");
        var u = Differences.Read(sent.StandardUncertainty, Dimension.Length, pointer + "/standardUncertainty", complaints) ?? 0;
        var length = sent.Length.Length;
        var estimate = sent.HalfWidth is { } tolerance
            ? TermValue.Within(length, tolerance.Length)
            : TermValue.Exactly(length) with { StandardUncertainty = u, DegreesOfFreedom = (double?)sent.DegreesOfFreedom };
        return TermValue.Of(new Term(new Fixed(length), sent.Numerator, sent.Denominator), sent.Name, estimate);
    }
}
