using System.Collections.Immutable;
using System.Text.Json;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire;

/// <summary>A customer, and until when what is kept of it need not be looked at.</summary>
/// <param name="Customer">The name that units bear, letter for letter.</param>
/// <param name="Units">How many units name it, or once did.</param>
/// <param name="First">When the first of them was taken in, UTC.</param>
/// <param name="Last">When something was last recorded of any of them, UTC.</param>
/// <param name="ReviewFrom">From when on a person should decide what is still needed: the last record and the years of Rebuild:KeepYears, UTC.</param>
/// <param name="Due">Whether that moment has passed.</param>
public sealed record CustomerWire(string Customer, int Units, DateTimeOffset First, DateTimeOffset Last, DateTimeOffset ReviewFrom, bool Due)
{
    /// <summary>From the store.</summary>
    public static CustomerWire From(CustomerSeen seen, int keepYears, DateTimeOffset now)
    {
        var review = seen.Last.AddYears(keepYears);
        return new(seen.Name, seen.Units, seen.First, seen.Last, review, review <= now);
    }
}

/// <summary>Everything that is on record of one customer.</summary>
/// <param name="Customer">The name.</param>
/// <param name="AsOf">When it was read, UTC.</param>
/// <param name="Entries">How many entries the shop's hash chain had.</param>
/// <param name="Head">Hash of the last of them.</param>
/// <param name="Units">The units that name the customer, or once did, in the order in which they were taken in.</param>
/// <param name="End">Always true, and last: an answer without it was cut off.</param>
public sealed record CustomerExportWire(string Customer, DateTimeOffset AsOf, long Entries, string Head, ImmutableArray<CustomerUnitWire> Units, bool End);

/// <summary>Everything that is on record of one unit.</summary>
/// <param name="Unit">The unit as it stands.</param>
/// <param name="Entries">Every entry of the chain that belongs to it, superseded or not, oldest first: readings, findings, decisions, plans, quotes, approvals, invoice lines, comebacks, attachments by their hash.</param>
/// <param name="Judgements">The judgements that someone relied on, each with the snapshot that it was made from.</param>
public sealed record CustomerUnitWire(UnitWire Unit, ImmutableArray<CustomerEntryWire> Entries, ImmutableArray<CustomerJudgementWire> Judgements);

/// <summary>One entry of the chain with what was recorded.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Record">What was recorded; absent when the entry only says that something happened.</param>
public sealed record CustomerEntryWire(AuditEntryWire Entry, JsonElement? Record)
{
    /// <summary>From the store.</summary>
    public static CustomerEntryWire From(HistoryEntry entry) => new(
        AuditEntryWire.From(new AuditEntry(entry.Event, entry.Operation, entry.Hash)), entry.Body.Length == 0 ? null : JsonElement.Parse(entry.Body));
}

/// <summary>A judgement that someone relied on.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Purpose">What relied on it.</param>
/// <param name="Time">When it was kept, UTC.</param>
/// <param name="Snapshot">Everything that was known of the unit.</param>
/// <param name="Judgement">The judgement.</param>
public sealed record CustomerJudgementWire(string Id, string Purpose, DateTimeOffset Time, JsonElement Snapshot, JsonElement Judgement)
{
    /// <summary>From the store.</summary>
    public static CustomerJudgementWire From(Judgement kept) => new(
        kept.Kept.Id, kept.Kept.Purpose, kept.Kept.At, JsonElement.Parse(kept.Snapshot.Span), JsonElement.Parse(kept.Body.Span));
}
