using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.PluginHost;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Fuzz.Rows;

/// <summary>Answers that hang on which edition of a family is loaded, and on somebody who is always faster.</summary>
internal static class EditionRows
{
    private const int Many = 24;
    private static ImmutableArray<Symptom> Symptoms { get; } = [.. Enumerable.Range(0, Many).Select(i => new Symptom(FormattableString.Invariant($"symptom-{i}"), Text.English(FormattableString.Invariant($"symptom-{i}"), "A symptom"), []))];

    /// <summary>While the unit is changed before each of these can be kept.</summary>
    public static readonly Row[] Raced =
    [
        new(412, "POST /v1/units/{unit}/decisions", """{ "subject": "third-gear/bore" }""", "/v1/units/u1/decisions"),
        new(412, "POST /v1/units/{unit}/stages", At: "/v1/units/u1/stages"),
    ];

    public static readonly Row RacedMove = new(412, "POST /v1/units/{unit}/edition-moves", At: "/v1/units/u1/edition-moves");

    public static readonly Row Move = RacedMove with { Status = 201 };

    /// <summary>Whether the owner's words fit the family can't be said without its rules.</summary>
    public static readonly Row WithoutRules = new(409, "PATCH /v1/units/{unit}", """{ "complaint": [] }""");

    /// <summary>More causes that bring more symptoms than any table holds, each every one.</summary>
    public static readonly Row[] Tangled =
    [
        new(201, "POST /v1/units", $$"""{ "id": "tangled", "complaint": [{{string.Join(", ", Symptoms.Select(s => $$"""{ "symptom": "{{s.Id}}" }"""))}}] }"""),
        new(422, "GET /v1/units/{unit}/diagnosis", At: "/v1/units/tangled/diagnosis"),
    ];

    /// <summary>The next edition of the shipped family.</summary>
    public static LoadedFamily Next(Func<Family, Family> changed)
    {
        var shipped = ShippedPlugins.Catalog.Find(ShopServer.Family)!;
        return new(changed(shipped.Family with { Version = new FamilyVersion(ShopServer.Family, "1.1.0"), Golden = [] }), shipped.Supplier with { Version = "1.1.0" });
    }

    /// <summary>A family with the tangle in it.</summary>
    public static Family Tangle(Family family) => family with
    {
        Symptoms = [.. family.Symptoms, .. Symptoms],
        Causes = [.. family.Causes, .. Enumerable.Range(0, Many).Select(i => new Cause(
            FormattableString.Invariant($"cause-{i}"), Text.English(FormattableString.Invariant($"cause-{i}"), "A cause"), 0.1, [.. Symptoms.Select(s => new SymptomLink(s.Id, 0.2, 0.3, 0.4))], [], new Source(SourceKind.Judgement, "made up here")))],
    };
}
