using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Dapper;

namespace RebuildApi.Storage.Sql.Personal;

/// <summary>
/// Finds what of a unit names a customer, and erases it. In a unit that never bore another name everything that tells of its owner goes; in one that changed
/// hands only what bears the name, since the rest may be somebody else's.
/// </summary>
internal sealed class Eraser(Statements statements, string shop)
{
    private const string Kept =
        """
        SELECT j.entry, c.body FROM judgement j JOIN content c ON c.shop = j.shop AND (c.sha256 = j.snapshot OR c.sha256 = j.judgement)
        WHERE j.shop = @shop AND j.unit = @unit
        """;

    private readonly PersonalRows _rows = new(statements, shop);

    /// <summary>What is to go.</summary>
    public ImmutableArray<(PersonalEntry Entry, ErasedEntry Erased)> Find(ErasureOrder order)
    {
        var entries = _rows.Of(order.Unit).Select(e => (Entry: e, Texts: e.Texts())).Where(e => !e.Texts.IsEmpty).ToImmutableArray();
        var isTheirs = entries.Where(e => e.Entry.Kind == "unit").All(e => e.Texts.GetValueOrDefault("customer") is null or "" || e.Texts["customer"] == order.Customer);
        return [.. entries.Where(e => Goes(e.Entry, e.Texts, order.Customer, isTheirs)).Select(e => (e.Entry, Erased(e.Entry, e.Texts)))];
    }

    /// <summary>What of an earlier erasure stands again, because a copy from before it was restored.</summary>
    public ImmutableArray<(PersonalEntry Entry, ErasedEntry Erased)> Find(Erasure earlier)
    {
        var named = earlier.Entries.Select(e => e.Sequence).ToHashSet();
        return [.. _rows.Of(earlier.Unit).Where(e => named.Contains(e.Sequence)).Select(e => (Entry: e, Texts: e.Texts())).Where(e => !e.Texts.IsEmpty)
            .Select(e => (e.Entry, Erased(e.Entry, e.Texts)))];
    }

    /// <summary>Lets it go, and what was answered with it.</summary>
    public void Erase(string unit, ImmutableArray<(PersonalEntry Entry, ErasedEntry Erased)> gone, long erasure)
    {
        var texts = gone.SelectMany(g => g.Entry.Texts().Values).ToImmutableArray();
        _rows.Erase(gone, erasure);
        new KeptAnswers(statements, shop).Blank(unit, texts);
    }

    /// <summary>Entries in whose own words, or in whose kept judgement, the name still stands.</summary>
    public ImmutableArray<PersonalEntry> Mentions(ErasureOrder order)
    {
        var kept = statements.Connection.Query<(long Entry, byte[] Body)>(Kept, new { shop, unit = order.Unit })
            .Where(k => NamesInJson(Encoding.UTF8.GetString(k.Body), order.Customer)).Select(k => k.Entry).ToHashSet();
        return [.. _rows.Of(order.Unit).Where(e => kept.Contains(e.Sequence) || NamesInJson(e.Told(), order.Customer))];
    }

    // JSON may write a letter as it is or escaped.
    private static bool NamesInJson(string json, string customer) => Names(json, customer) || Names(json, JsonEncodedText.Encode(customer).ToString());

    private static bool Goes(PersonalEntry entry, ImmutableSortedDictionary<string, string> texts, string customer, bool isTheirs) =>
        isTheirs && PersonalFields.IsTheirs(entry.Kind) ? true
        : entry.Kind == "unit" ? texts.GetValueOrDefault("customer") == customer
        : texts.Values.Any(text => Names(text, customer));

    private static ErasedEntry Erased(PersonalEntry entry, ImmutableSortedDictionary<string, string> texts) => new(
        entry.Sequence, entry.Kind, [.. texts.Keys], entry.Form == ChainLink.Old ? PersonalRows.HashOf(PersonalRows.Blanked(entry)) : null);

    private static bool Names(string text, string customer) => text.Contains(customer, StringComparison.OrdinalIgnoreCase);
}
