using System.Collections.Immutable;
using System.Text.Json;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire;

/// <summary>One entry of the hash chain.</summary>
/// <param name="Sequence">Grows by one with each.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Actor">Who: the token's name, or <c>local</c>.</param>
/// <param name="Operation">By which operation: method and path.</param>
/// <param name="Kind">What sort of thing: <c>measurement</c>, <c>decision</c>, <c>approval</c>, <c>policy</c>, <c>plugin-approval</c>, <c>settings</c> and so on.</param>
/// <param name="Unit">The unit that it belongs to; absent when to none.</param>
/// <param name="Id">Id of the thing.</param>
/// <param name="Hash">SHA-256 of the entry, which holds the hash of the one before.</param>
public sealed record AuditEntryWire(long Sequence, DateTimeOffset Time, string Actor, string Operation, string Kind, string? Unit, string Id, string Hash)
{
    /// <summary>From the store.</summary>
    public static AuditEntryWire From(AuditEntry entry)
    {
        var e = entry.Event;
        return new(e.Sequence, e.At, e.Actor, entry.Operation, e.Kind, e.Unit.Length == 0 ? null : e.Unit, e.Id, entry.Hash);
    }
}

/// <summary>One entry with all that its hash is made of: each field behind its length in bytes as 8 bytes, big-endian, in the order shop, sequence, stamp,
/// actor, operation, kind, unit, id, body, previous, and form where that is not 1.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Shop">The shop.</param>
/// <param name="Stamp">The time as it was hashed.</param>
/// <param name="Previous">Hash of the entry before; empty for the first.</param>
/// <param name="Body">What was recorded, as the text that was hashed; empty when the entry only says that something happened.</param>
/// <param name="Form">1, or 2 since texts that name a customer stand apart from the chain.</param>
/// <param name="Apart">Those texts, by field: the body bears a seal in the place of each. One that is sealed and not here was erased.</param>
/// <param name="Record">The body read as JSON, with those texts in their places.</param>
public sealed record AuditRecordWire(
    AuditEntryWire Entry, string Shop, string Stamp, string Previous, string Body, long Form, IReadOnlyDictionary<string, SealedTextWire> Apart, JsonElement? Record)
{
    /// <summary>From the store.</summary>
    public static AuditRecordWire From(AuditRecord record) => new(
        AuditEntryWire.From(record.Entry), record.Shop, record.Stamp, record.Previous, record.Body, record.Form,
        record.Apart.ToDictionary(t => t.Key, t => new SealedTextWire(t.Value.Salt, t.Value.Text), StringComparer.Ordinal),
        record.Told.Length == 0 ? null : JsonElement.Parse(record.Told));
}

/// <summary>A text that stands apart. Its seal is <c>sealed:</c> and SHA-256 of the random bytes followed by the text in UTF-8, lower-case hex.</summary>
/// <param name="Salt">32 random bytes, lower-case hex.</param>
/// <param name="Text">The text.</param>
public sealed record SealedTextWire(string Salt, string Text);

/// <summary>What walking the chain found.</summary>
/// <param name="Intact">Whether every entry follows from the one before, and the tables say what the chain says.</param>
/// <param name="Entries">How many entries were walked.</param>
/// <param name="Head">Hash of the last; note it outside. Empty when there is none.</param>
/// <param name="FirstBroken">The first entry that is wrong, if one is.</param>
/// <param name="Why">What is wrong with it, in words.</param>
/// <param name="NotedHead">The head that was asked for.</param>
/// <param name="NotedAt">The entry that bears it; absent when the chain no longer holds it.</param>
/// <param name="Erasures">What was erased since, by whom and when: texts that name a customer, and nothing else.</param>
/// <param name="Proves">What an intact chain shows.</param>
/// <param name="DoesNotProve">What it can't show.</param>
public sealed record VerificationWire(
    bool Intact,
    long Entries,
    string Head,
    long? FirstBroken,
    string? Why,
    string? NotedHead,
    long? NotedAt,
    ImmutableArray<ErasureSeenWire> Erasures,
    string Proves,
    string DoesNotProve)
{
    private const string Shown = "No entry was changed, taken out, put in or moved without changing every hash that follows it, the tables say what the entries say, and texts that name a customer are as they were sent or were erased on record: an erasure takes no more than such a text.";

    private const string NotShown =
        "Someone who can write to the file can rewrite the whole chain from any entry on, or drop its end. Only a head that was noted elsewhere (on paper, in a mail) shows that: ask with head=HASH.";

    /// <summary>From the store. A chain that no longer holds a noted head is not intact.</summary>
    public static VerificationWire From(ChainReport report, string? notedHead)
    {
        var lost = notedHead is not null && report.Noted is null;
        var why = report.Why ?? (lost ? "the noted head is not in the chain: entries were rewritten or dropped after it was noted, or it belongs to another shop" : null);
        return new(report.Intact && !lost, report.Entries, report.Head, report.FirstBroken, why, notedHead, report.Noted, [.. report.Erasures.Select(ErasureSeenWire.From)], Shown, NotShown);
    }
}

/// <summary>That texts were erased from a unit.</summary>
/// <param name="Sequence">The entry that says so.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Actor">By whom: the token's name.</param>
/// <param name="Unit">From which unit.</param>
/// <param name="Entries">The entries whose texts went.</param>
/// <param name="InBody">How many of these were written by an edition that kept such texts in the body: their hash can't be worked out any more, and what else they say is vouched for only since the erasure.</param>
public sealed record ErasureSeenWire(long Sequence, DateTimeOffset Time, string Actor, string Unit, ImmutableArray<long> Entries, int InBody)
{
    /// <summary>From the store.</summary>
    public static ErasureSeenWire From(ErasureSeen seen) => new(seen.Sequence, seen.Time, seen.Actor, seen.Unit, seen.Entries, seen.InBody);

    /// <summary>In words, for a person.</summary>
    public string Words() => string.Create(System.Globalization.CultureInfo.InvariantCulture,
        $"entries {string.Join(", ", Entries)} of {Unit}: erased on {Time.UtcDateTime:yyyy-MM-dd} by {Actor}, says entry {Sequence}{(InBody == 0 ? "" : $"; {InBody} of them can't be held against their hash any more")}");
}
