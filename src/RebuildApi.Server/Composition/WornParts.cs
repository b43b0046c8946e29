using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Composition;

/// <summary>What was read of the parts that came in, over all units of a family.</summary>
public sealed class WornParts(ShopHistory history, FamilyBook families)
{
    /// <summary>The query parameters that say which.</summary>
    public static ImmutableArray<QueryOption> Options { get; } =
    [
        new("family", "Id of the family.", Required: true),
        new("kind", "Id of the kind of part.", Required: true),
        new("characteristic", "Id of the characteristic.", Required: true),
    ];

    /// <summary>The characteristic that a request names.</summary>
    /// <exception cref="ProblemException">One of the three is missing or unknown.</exception>
    public (FamilyIndex Family, string Kind, Characteristic Characteristic) Asked(HttpContext http)
    {
        var family = families.Find(Needed(http, "family")) ?? throw Unknown("family", Problems.UnknownFamily, [.. families.All.Select(f => f.Family.Version.Id)], http);
        if (!family.Kinds.TryGetValue(Needed(http, "kind"), out var kind))
            throw Unknown("kind", FieldProblems.UnknownKind, [.. family.Kinds.Keys.Order(StringComparer.Ordinal)], http);
        var characteristic = family.CharacteristicOf(kind.Id, Needed(http, "characteristic"))
            ?? throw Unknown("characteristic", FieldProblems.UnknownCharacteristic, [.. kind.Characteristics.Select(c => c.Id)], http);
        return (family, kind.Id, characteristic);
    }

    /// <summary>What was read, in SI, in the order in which the units were taken in. Parts that were chosen or fitted by the shop do not count.</summary>
    public async Task<ImmutableArray<(string Unit, double Value)>> Read(FamilyIndex family, string kind, Characteristic characteristic, CancellationToken cancellation)
    {
        var read = new List<(DateTimeOffset Opened, string Unit, double Value)>();
        await foreach (var file in history.Files(family.Family.Version.Id, cancellation))
        {
            if (history.ViewOf(file) is { } view)
                read.AddRange(Found(view, kind, characteristic).Select(v => (file.Unit.Opened, file.Unit.Id, v)));
        }

        return [.. read.OrderBy(r => r.Opened).ThenBy(r => r.Unit, StringComparer.Ordinal).Select(r => (r.Unit, r.Value))];
    }

    private static IEnumerable<double> Found(UnitView view, string kind, Characteristic characteristic)
    {
        var book = new EstimateBook(view);
        // What came in is the first revision, whatever was done to the part since.
        var parts = view.Snapshot.Components.Where(c => c.Kind == kind).ToDictionary(c => c.Id, c => c with { Revision = 1 }, StringComparer.Ordinal);
        return view.Snapshot.Placements
            .Where(p => p.Role == PlacementRole.Found && parts.ContainsKey(p.Component))
            .Select(p => book.Read(new PlacedComponent(p, parts[p.Component]), characteristic, characteristic.Report))
            .Where(e => e.Value is not null)
            .Select(e => e.Value!.InSi);
    }

    private static string Needed(HttpContext http, string name) =>
        QueryText.Of(http, name) ?? throw QueryText.Wrong(name, FieldProblems.MissingField, "The parameter is missing.", null);

    private static ProblemException Unknown(string name, Problem kind, string[] allowed, HttpContext http)
    {
        var got = QueryText.Of(http, name)!;
        return QueryText.Wrong(name, kind, $"There is no {name} of this id.", got.Length > 100 ? got[..100] : got, allowed, Nearest.Fix(got, allowed));
    }
}
