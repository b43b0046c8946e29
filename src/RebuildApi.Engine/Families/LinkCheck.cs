using RebuildApi.Contracts;

namespace RebuildApi.Engine.Families;

/// <summary>What pairings, sets, meshes, damage policies, hooks and causes refer to is there.</summary>
internal static class LinkCheck
{
    public static void Run(Family family, FamilyReport report)
    {
        var names = new FamilyNames(family);
        foreach (var set in family.Sets)
            Places($"sets[{set.Id}].positions", set.Positions, names, report);
        foreach (var hook in family.Hooks)
            Places($"hooks[{hook.Id}].positions", hook.Positions, names, report);
        foreach (var mesh in family.Meshes)
            Mesh(mesh, names, report);
        foreach (var (policy, i) in family.Damage.Select((p, i) => (p, i)))
            Damage(policy, $"damage[{i}]", names, report);
        foreach (var cause in family.Causes)
            Cause(cause, family, names, report);
        foreach (var symptom in family.Symptoms)
            Symptom(symptom, report);
        foreach (var test in family.Tests ?? [])
            Test(test, family, report);
    }

    private static void Places(string field, IEnumerable<string> positions, FamilyNames names, FamilyReport report)
    {
        foreach (var position in positions.Where(p => !names.HasPosition(p)))
            report.Error(field, "position-unknown", $"There is no position '{position}'.");
    }

    private static void Mesh(GearMesh mesh, FamilyNames names, FamilyReport report)
    {
        var field = $"meshes[{mesh.Id}]";
        report.Require(names.Teeth(mesh.Driver) is not null, $"{field}.driver", "teeth-unknown", $"'{mesh.Driver}' has no such row of teeth.");
        report.Require(names.Teeth(mesh.Driven) is not null, $"{field}.driven", "teeth-unknown", $"'{mesh.Driven}' has no such row of teeth.");
        report.Require(names.IsLengthAt(mesh.CentreDistance), $"{field}.centreDistance", "address-unknown", $"'{mesh.CentreDistance}' is not a length of any position.");
    }

    private static void Damage(DamagePolicy policy, string field, FamilyNames names, FamilyReport report)
    {
        var anywhere = policy.Kind == "*";
        report.Require(anywhere || names.HasKind(policy.Kind), $"{field}.kind", "kind-unknown", names.NoKind(policy.Kind));
        report.Require(anywhere || names.DamageOf(policy.Kind).Contains(policy.DamageClass), $"{field}.damageClass", "damage-unknown", $"'{policy.Kind}' is not looked at for '{policy.DamageClass}'.");
        report.Require(policy.Extent is "*" or "slight" or "moderate" or "severe", $"{field}.extent", "extent-unknown", $"'{policy.Extent}' is not slight, moderate, severe or *.");
    }

    private static void Cause(Cause cause, Family family, FamilyNames names, FamilyReport report)
    {
        var field = $"causes[{cause.Id}]";
        report.Require(cause.Prior is > 0 and < 1, $"{field}.prior", "probability-range", "A prior lies between 0 and 1.");
        foreach (var link in cause.Explains)
            Link(link, family, $"{field}.explains[{link.Symptom}]", report);
        foreach (var sign in cause.Signs.Where(s => !IsKnown(s, family, names)))
            report.Error($"{field}.signs", "sign-unknown", $"The family declares nothing that {sign} could mean.");
        report.Require(cause.PriorStrength is null or > 0, $"{field}.priorStrength", "strength-range", "A prior is worth more than no unit.");
        foreach (var sign in cause.Signs)
        {
            InOrder(sign.Found, $"{field}.signs.found", report);
            InOrder(sign.Otherwise, $"{field}.signs.otherwise", report);
            report.Require(sign.Minutes is null or > 0, $"{field}.signs.minutes", "minutes-range", "Looking takes some time.");
        }
    }

    private static void Symptom(Symptom symptom, FamilyReport report)
    {
        InOrder(symptom.Leak, $"symptoms[{symptom.Id}].leak", report);
        InOrder(symptom.Loosely, $"symptoms[{symptom.Id}].loosely", report);
    }

    private static void Test(DiagnosticTest test, Family family, FamilyReport report)
    {
        var field = $"tests[{test.Id}]";
        report.Require(test.Minutes > 0, $"{field}.minutes", "minutes-range", "A test takes some time.");
        report.Require(test.Shows.Length > 0, $"{field}.shows", "test-shows-nothing", "A test that shows no cause tells nothing.");
        InOrder(test.Otherwise, $"{field}.otherwise", report);
        foreach (var link in test.Shows)
        {
            report.Require(family.Causes.Any(c => c.Id == link.Cause), $"{field}.shows[{link.Cause}]", "cause-unknown", $"There is no cause '{link.Cause}'.");
            InOrder(link.Shown, $"{field}.shows[{link.Cause}]", report);
        }

        report.Require(test.Shows.Select(l => l.Cause).Distinct().Count() == test.Shows.Length, $"{field}.shows", "cause-twice", "A cause is named once.");
    }

    private static void InOrder(Likelihood? judged, string field, FamilyReport report) => report.Require(
        judged is null || (0 <= judged.Low && judged.Low <= judged.Best && judged.Best <= judged.High && judged.High <= 1), field, "probability-range", "0 <= low <= best <= high <= 1.");

    private static void Link(SymptomLink link, Family family, string field, FamilyReport report)
    {
        var symptom = family.Symptoms.FirstOrDefault(s => s.Id == link.Symptom);
        report.Require(symptom is not null, field, "symptom-unknown", $"There is no symptom '{link.Symptom}'.");
        report.Require(link.Gear is null || symptom?.Gears.Contains(link.Gear) == true, field, "gear-unknown", $"The symptom does not belong to a gear '{link.Gear}'.");
        var inOrder = 0 <= link.Low && link.Low <= link.Best && link.Best <= link.High && link.High <= 1;
        report.Require(inOrder, field, "probability-range", "0 <= low <= best <= high <= 1.");
    }

    private static bool IsKnown(Sign sign, Family family, FamilyNames names) => sign switch
    {
        AttributeSign a => names.Attribute(a.Position, a.Attribute) is { } d && a.Values.All(v => d.Values.Any(x => x.Id == v)),
        DamageSign d => names.KindAt(d.Position) is { } kind && d.Classes.All(c => kind.DamageClasses.Contains(c)),
        VerdictSign v => family.Loops.Any(l => l.Id == v.Subject) || (Address.TryParse(v.Subject) is { } at && names.Find(at) is not null),
        _ => false,
    };
}
