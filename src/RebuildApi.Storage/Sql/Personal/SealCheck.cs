using System.Text.Json;
using System.Text.Json.Nodes;

namespace RebuildApi.Storage.Sql.Personal;

/// <summary>
/// Holds the texts that stand apart against their seals, on a walk over the chain. A text may be gone only when a later entry says that it was erased; a body may
/// differ from its hash only where texts still stood in bodies, and only when a later entry says to what it was changed.
/// </summary>
internal sealed class SealCheck
{
    private readonly SortedDictionary<long, string?> _open = [];
    private readonly HashSet<long> _told = [];
    private readonly List<ErasureSeen> _erasures = [];
    private bool _apart;

    /// <summary>The erasures that were met.</summary>
    public IReadOnlyList<ErasureSeen> Erasures => _erasures;

    /// <summary>The first entry that nothing later excuses, and why.</summary>
    public (long Sequence, string Why)? Unexcused => _open.Count == 0
        ? null
        : (_open.First().Key, _open.First().Value is null ? "a text that stands apart is gone, and no erasure names it" : "it was changed after it was written");

    /// <summary>Looks at one entry.</summary>
    /// <returns>What is wrong with it for certain; null when nothing is, or when a later entry may excuse it.</returns>
    public string? Look(ChainLink link, string? personal)
    {
        _apart |= link.Form != ChainLink.Old;
        if (link.Form == ChainLink.Old)
            return LookInBody(link, personal);
        if (link.Computed() != link.Hash)
            return "it was changed after it was written";
        if (LookApart(link, personal) is { } why)
            return why;
        return link.Kind == "erasure" ? Excuse(link) : null;
    }

    // Once texts stand apart no entry after it has them in its body: otherwise a changed entry could be called an old one.
    private string? LookInBody(ChainLink link, string? personal)
    {
        if (_apart)
            return "it is of an older form than an entry before it";
        if (personal is not null)
            return "a text stands beside it that it does not name";
        if (link.Computed() == link.Hash)
            return null;
        if (PersonalFields.Of(link.Kind).IsEmpty)
            return "it was changed after it was written";
        _open[link.Sequence] = PersonalRows.HashOf(link.Body);
        return null;
    }

    private string? LookApart(ChainLink link, string? personal)
    {
        var fields = PersonalFields.Of(link.Kind);
        if (fields.IsEmpty || link.Body.Length == 0)
            return personal is null ? null : "a text stands beside it that it does not name";
        var seals = PersonalBody.Texts(JsonNode.Parse(link.Body)!.AsObject(), fields).Where(t => Seal.Is(t.Value)).ToDictionary(StringComparer.Ordinal);
        var texts = PersonalBody.Read(personal);
        if (texts.Any(t => !seals.TryGetValue(t.Key, out var seal) || Seal.Of(t.Value) != seal))
            return "a text that stands apart from it was changed";
        if (texts.Count < seals.Count)
            _open[link.Sequence] = null;
        if (texts.Count > 0)
            _told.Add(link.Sequence);
        return null;
    }

    private string? Excuse(ChainLink link)
    {
        var erasure = JsonSerializer.Deserialize(link.Body, StoreJson.Default.Erasure)!;
        foreach (var entry in erasure.Entries)
        {
            if (_told.Contains(entry.Sequence))
                return FormattableString.Invariant($"it says that entry {entry.Sequence} was erased, and its text stands there");
            if (_open.TryGetValue(entry.Sequence, out var body) && body == entry.BodySha256)
                _open.Remove(entry.Sequence);
        }

        _erasures.Add(new ErasureSeen(link.Sequence, Stamp.Read(link.At), link.Actor, link.Unit, [.. erasure.Entries.Select(e => e.Sequence)], erasure.Entries.Count(e => e.BodySha256 is not null)));
        return null;
    }
}
