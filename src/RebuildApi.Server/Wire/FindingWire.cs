using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>Something seen on one revision of a part. Exactly one of damage, attribute and sound.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Component">The part.</param>
/// <param name="Revision">The revision it was seen on.</param>
/// <param name="Damage">Damage that was seen.</param>
/// <param name="Attribute">An attribute that was seen.</param>
/// <param name="Sound">Inspected, and no damage found.</param>
/// <param name="Note">In the person's own words.</param>
/// <param name="Person">Who.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Supersedes">The finding it corrects.</param>
public sealed record FindingWire(
    string Id,
    string Component,
    int Revision,
    DamageWire? Damage,
    AttributeSeenWire? Attribute,
    bool? Sound,
    string? Note,
    string Person,
    string Bench,
    DateTimeOffset Time,
    string? Supersedes)
{
    /// <summary>From the contract.</summary>
    public static FindingWire From(Finding f) => new(
        f.Id, f.Component, f.Revision,
        f.Observation is DamageSeen d ? new DamageWire(d.Class, d.Extent, d.Place) : null,
        f.Observation is AttributeSeen a ? new AttributeSeenWire(a.Attribute, a.Value) : null,
        f.Observation is Contracts.Sound ? true : null,
        f.Note, f.Taken.Person, f.Taken.Bench, f.Taken.At, f.Supersedes);
}

/// <summary>Damage.</summary>
/// <param name="Class">The standard's class.</param>
/// <param name="Extent">How far it has gone.</param>
/// <param name="Place">The feature or side.</param>
public sealed record DamageWire(string Class, string Extent, string? Place);

/// <summary>An attribute with its value.</summary>
/// <param name="Id">Which attribute.</param>
/// <param name="Value">Its value.</param>
public sealed record AttributeSeenWire(string Id, string Value);

/// <summary>A batch of findings. What is said for the batch holds for each finding that does not say it itself.</summary>
/// <param name="Findings">The findings; all are stored or none.</param>
/// <param name="Person">Who.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When.</param>
public sealed record FindingBatchRequest(
    [Entries(1, 1000)] ImmutableArray<FindingRequest> Findings,
    [Words(100)] string? Person = null,
    [Words(100)] string? Bench = null,
    DateTimeOffset? Time = null) : IFromSheet<FindingBatchRequest, FindingBatchRequest>
{
    /// <inheritdoc/>
    public static (FindingBatchRequest Value, ImmutableArray<string> Pointers) FromJson(FindingBatchRequest json) => (json, [.. json.Findings.Select((_, i) => Pointer.Entry("/findings", i))]);

    /// <inheritdoc/>
    public static (FindingBatchRequest Value, ImmutableArray<string> Pointers) FromSheet(ImmutableArray<SheetRow> rows, Complaints complaints)
    {
        var own = rows.Where(r => r.Is("inspection", "attribute") && r.IsFilled).SelectMany(r => FindingRequest.FromRow(r, complaints).Select(f => (f, r.Pointer))).ToArray();
        if (own.Length == 0)
            complaints.Add("row/2", FieldProblems.BadCount, "No row holds a finding.");
        return (new([.. own.Select(x => x.f)]), [.. own.Select(x => x.Pointer)]);
    }
}

/// <summary>Something seen. Exactly one of damage, attribute and sound.</summary>
/// <param name="Position">Where the part sits; the second of several like parts has <c>#2</c> behind it.</param>
/// <param name="Component">The part, where no position is given.</param>
/// <param name="Damage">Damage that was seen.</param>
/// <param name="Attribute">An attribute that was seen.</param>
/// <param name="Sound">Inspected as the family asks, and no damage found.</param>
/// <param name="Note">In the person's own words.</param>
/// <param name="Person">Who.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
/// <param name="Supersedes">The finding it corrects.</param>
public sealed record FindingRequest(
    [Words(70)] string? Position = null,
    [Id] string? Component = null,
    DamageRequest? Damage = null,
    AttributeRequest? Attribute = null,
    bool Sound = false,
    [Words(2000, Lines = true)] string? Note = null,
    [Words(100)] string? Person = null,
    [Words(100)] string? Bench = null,
    DateTimeOffset? Time = null,
    [Id] string? Id = null,
    [Id] string? Supersedes = null)
{
    /// <summary>From a row of a sheet; an inspection may name several damages, one in each value cell: class, extent, place.</summary>
    public static IEnumerable<FindingRequest> FromRow(SheetRow row, Complaints complaints)
    {
        var blank = new FindingRequest(row["position"], Note: row["note"], Person: row.Person, Bench: row.Bench);
        if (row["what"] == "attribute")
        {
            yield return blank with { Attribute = new AttributeRequest(row["id"] ?? "", row["value1"] ?? "") };
            yield break;
        }

        foreach (var column in SheetRow.Values.Where(row.Cells.ContainsKey))
        {
            if (OfInspection(row[column]!, blank, $"{row.Pointer}/{column}", complaints) is { } finding)
                yield return finding;
        }
    }

    private static FindingRequest? OfInspection(string cell, FindingRequest blank, string pointer, Complaints complaints)
    {
        if (cell.Equals("sound", StringComparison.OrdinalIgnoreCase))
            return blank with { Sound = true };
        var words = cell.Split(' ', 3, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (words.Length >= 2 && DamageRequest.Extents.Contains(words[1]))
            return blank with { Damage = new DamageRequest(words[0], words[1], words.Length > 2 ? words[2] : null) };
        complaints.Add(pointer, FieldProblems.NotAllowed, "Write sound, or a damage class and its extent, and the place if need be: macropitting moderate thrust-side.", cell,
            ["sound", .. DamageRequest.Extents]);
        return null;
    }

    /// <summary>How it was seen, the batch filling in what this does not say.</summary>
    public TakenSaid Taken(FindingBatchRequest batch) => new(null, null, Person ?? batch.Person, Bench ?? batch.Bench, Time ?? batch.Time, null);
}

/// <summary>Damage that was seen.</summary>
/// <param name="Class">The standard's class, one that the family looks for on this part.</param>
/// <param name="Extent">How far it has gone.</param>
/// <param name="Place">The feature or side.</param>
public sealed record DamageRequest([Id] string Class, [OneOf("slight", "moderate", "severe")] string Extent, [Words(64)] string? Place = null)
{
    /// <summary>How far damage may have gone.</summary>
    public static readonly string[] Extents = ["slight", "moderate", "severe"];
}

/// <summary>An attribute that was seen.</summary>
/// <param name="Id">Which attribute.</param>
/// <param name="Value">Its value, from the family's list.</param>
public sealed record AttributeRequest([Words(64)] string Id, [Words(64)] string Value);

/// <summary>What came of a batch of findings.</summary>
/// <param name="Stored">The findings, as they are kept.</param>
/// <param name="Found">Parts that were not recorded before and are now, since something was seen on them.</param>
/// <param name="UnitVersion">The version of the unit after it.</param>
public sealed record FindingBatchWire(ImmutableArray<FindingWire> Stored, ImmutableArray<ComponentWire> Found, long UnitVersion);
