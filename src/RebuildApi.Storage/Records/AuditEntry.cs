using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>One entry of the hash chain, without its body.</summary>
/// <param name="Event">What happened.</param>
/// <param name="Operation">By which operation: method and path.</param>
/// <param name="Hash">Hash of the entry.</param>
public sealed record AuditEntry(StoreEvent Event, string Operation, string Hash);

/// <summary>One entry of the hash chain with everything that its hash is made of.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Shop">The shop, the first field of the hash.</param>
/// <param name="Stamp">The time as it was hashed.</param>
/// <param name="Body">What was recorded, as JSON, byte for byte as it was hashed; empty when the entry only says that something happened.</param>
/// <param name="Previous">Hash of the entry before; empty for the first.</param>
/// <param name="Form">1, or 2 since texts that name a customer stand apart; then it is the last field of the hash.</param>
/// <param name="Apart">The texts that stand apart, by field; the body bears a seal in the place of each. Those that were erased are not there.</param>
/// <param name="Told">The body with those texts in their places.</param>
public sealed record AuditRecord(AuditEntry Entry, string Shop, string Stamp, string Body, string Previous, long Form, ImmutableSortedDictionary<string, SealedText> Apart, string Told);

/// <summary>Which entries of the chain are wanted.</summary>
/// <param name="Kind">Only those of this kind; null for all.</param>
/// <param name="Unit">Only those of this unit; null for all.</param>
public sealed record AuditFilter(string? Kind = null, string? Unit = null);
