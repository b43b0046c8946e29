using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Diagnosis;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Diagnosis;

namespace RebuildApi.Server.Composition;

/// <summary>Makes a snapshot of a gearbox that is only spoken of, so that it is diagnosed exactly as one of the shop's.</summary>
public sealed class SaidGearbox(FamilyIndex family, Complaints complaints)
{
    private static readonly Taken s_said = new(null, null, "", "", DateTimeOffset.UnixEpoch, null);

    /// <summary>The gearbox through its family; what does not fit the family is complained of.</summary>
    public UnitView Of(DiagnosisRequest sent)
    {
        var complaint = ComplaintCheck.Read(sent.Complaint, family, complaints);
        foreach (var (test, i) in (sent.Tests ?? []).Select((t, i) => (t.Test, i)))
            CheckTest(test, Pointer.Entry("/tests", i) + "/test", family, complaints);
        var seen = (sent.Findings ?? []).Select((f, i) => (f.Position, Kind: KindAt(f.Position, Pointer.Entry("/findings", i)), What: Seen(f, Pointer.Entry("/findings", i)))).ToArray();
        foreach (var (subject, i) in (sent.Limits ?? []).Select((l, i) => (l.Subject, i)))
            CheckSubject(subject, Pointer.Entry("/limits", i) + "/subject");
        var places = seen.Where(s => s.Kind is not null).DistinctBy(s => s.Position).ToArray();
        return new UnitView(
            new UnitSnapshot(
                "said", family.Family.Version, complaint,
                [.. places.Select(p => new Component(p.Position, 1, p.Kind!.Id, Origin.Unit, ImmutableSortedDictionary<string, string>.Empty, null))],
                [.. places.Select(p => new Placement(p.Position, 1, p.Position, PlacementRole.Found, Facing.Unspecified, null))],
                [], [],
                [.. seen.Where(s => s.Kind is not null && s.What is not null).Select((s, i) => new Finding($"f{i}", s.Position, 1, s.What!, null, s_said, null))],
                [], Policy.Default)
            {
                Tests = [.. (sent.Tests ?? []).Select((t, i) => new TestSeen($"t{i}", t.Test, t.Shown, s_said))],
            },
            family);
    }

    /// <summary>How values stand to their limits, as said.</summary>
    public static ImmutableDictionary<string, Standing> StandingsOf(DiagnosisRequest sent) => (sent.Limits ?? [])
        .DistinctBy(l => l.Subject)
        .ToImmutableDictionary(l => l.Subject, l => Enum.Parse<Standing>(l.Standing, ignoreCase: true), StringComparer.Ordinal);

    /// <summary>Complains of a test that the family does not know.</summary>
    public static void CheckTest(string test, string pointer, FamilyIndex family, Complaints complaints)
    {
        var known = (family.Family.Tests ?? []).Select(t => t.Id).ToArray();
        if (!known.Contains(test))
            complaints.AddUnknown(pointer, FieldProblems.UnknownTest, $"The family has no test {test}.", test, known);
    }

    /// <summary>Complains of a cause that the family does not know.</summary>
    public static void CheckCause(string cause, string pointer, FamilyIndex family, Complaints complaints)
    {
        var known = family.Family.Causes.Select(c => c.Id).ToArray();
        if (!known.Contains(cause))
            complaints.AddUnknown(pointer, FieldProblems.UnknownCause, $"The family has no cause {cause}.", cause, known);
    }

    private void CheckSubject(string subject, string pointer)
    {
        if (family.Loops.ContainsKey(subject) || (Address.TryParse(subject) is { } at && family.CharacteristicAt(at) is not null))
            return;
        complaints.Add(pointer, FieldProblems.UnknownSubject, $"{subject} is neither a clearance of the family nor a characteristic of one of its positions.", subject);
    }

    private PartKind? KindAt(string position, string pointer)
    {
        if (family.KindAt(position) is { } kind)
            return kind;
        complaints.AddUnknown(pointer + "/position", FieldProblems.UnknownPosition, $"The family has no position {position}.", position, family.Positions.Keys);
        return null;
    }

    private Observation? Seen(SeenRequest sent, string pointer)
    {
        var kind = family.KindAt(sent.Position);
        switch (sent)
        {
            case { Damage: { } d, Attribute: null, Sound: false }:
                if (kind is not null)
                    AttributeCheck.CheckDamage(kind, d.Class, pointer + "/damage/class", complaints);
                return new DamageSeen(d.Class, d.Extent, d.Place);
            case { Damage: null, Attribute: { } a, Sound: false }:
                if (kind is not null)
                    AttributeCheck.Check(kind, a.Id, a.Value, pointer + "/attribute/id", pointer + "/attribute/value", complaints);
                return new AttributeSeen(a.Id, a.Value);
            case { Damage: null, Attribute: null, Sound: true }:
                return new Sound();
            default:
                complaints.Add(pointer, FieldProblems.Contradiction, "A finding is exactly one of damage, attribute and sound.");
                return null;
        }
    }
}
