using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.TestKit;

/// <summary>Builds small families for tests, one call per thing that matters to the test. Immutable: each call gives a new builder.</summary>
public sealed record FamilyBuilder(Family Family)
{
    public static readonly Source Invented = new(SourceKind.Invented, "a test");

    public static FamilyBuilder Named(string id = "test-family") => new(new Family(
        new FamilyVersion(id, "1.0.0"), Words(id), [], [], [], [], [], [], [], [], [], [], [], [], [], [], []));

    public static Text Words(string words) => Text.English(words, words);

    /// <summary>A kind of part with one position of the same id.</summary>
    public FamilyBuilder Part(string id, params Characteristic[] characteristics) => Kind(id, characteristics).Position(id, id);

    public FamilyBuilder Kind(string id, params Characteristic[] characteristics) => Kind(new PartKind(id, Words(id), [.. characteristics], [], [], [], null, false));

    public FamilyBuilder Kind(PartKind kind) => new(Family with { Kinds = Family.Kinds.Add(kind) });

    public FamilyBuilder With(string kind, Func<PartKind, PartKind> change) =>
        new(Family with { Kinds = [.. Family.Kinds.Select(k => k.Id == kind ? change(k) : k)] });

    public FamilyBuilder Attribute(string kind, string attribute, params string[] values) => With(kind, k => k with
    {
        Attributes = k.Attributes.Add(new AttributeDefinition(attribute, Words(attribute), [.. values.Select(v => new AttributeValue(v, Words(v)))])),
    });

    public FamilyBuilder Position(string id, string kind, int quantity = 1) => new(Family with
    {
        Positions = Family.Positions.Add(new Position(id, Words(id), kind, "mainshaft", quantity, Family.Positions.Length + 1, [])),
    });

    public FamilyBuilder Loop(string id, Limits window, params Term[] terms) => Loop(
        new ClearanceLoop(id, Words(id), "mainshaft", [.. terms], window, null, TrialMethod.GapWithPieces, Criticality.Functional));

    public FamilyBuilder Loop(ClearanceLoop loop) => new(Family with { Loops = Family.Loops.Add(loop) });

    public FamilyBuilder Series(string id, string kind, Length tolerance, params Length[] thicknesses) => new(Family with
    {
        Series = Family.Series.Add(new Series(id, kind, [.. thicknesses.Select((t, i) => new SeriesMember($"{id}-{i + 1}", t))], tolerance, Invented)),
    });

    public FamilyBuilder Operation(Operation operation) => new(Family with { Operations = Family.Operations.Add(operation) });

    public FamilyBuilder Pairing(PairingRule rule) => new(Family with { Pairings = Family.Pairings.Add(rule) });

    public FamilyBuilder Damage(DamagePolicy policy) => new(Family with { Damage = Family.Damage.Add(policy) });

    /// <summary>A measured length with service limits in millimetres; either end may be absent.</summary>
    public static Characteristic LengthOf(string id, decimal? low, decimal? high, Statistic report = Statistic.Mean, int readings = 1) => new(
        id, Words(id), Dimension.Length, report, readings, null, Window(low, high), Distribution.None, Criticality.Ordinary, null, []);

    public static Limits? Window(decimal? low, decimal? high, decimal? target = null) => low is null && high is null
        ? null
        : new Limits(Mm(low), Mm(high), Mm(target), Invented);

    public static Term Opens(string position, string characteristic) => new(new OfPart(new Address(position, characteristic)), 1);

    public static Term Closes(string position, string characteristic) => new(new OfPart(new Address(position, characteristic)), -1);

    public static Term Piece(string series, string position, int maxPieces = 1) => new(new OfSeries(series, position, maxPieces), -1);

    private static Exact? Mm(decimal? value) => value is { } v ? new Exact(Length.Millimetres(v)) : null;
}
