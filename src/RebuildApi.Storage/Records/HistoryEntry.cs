namespace RebuildApi.Storage;

/// <summary>One entry of the record of a unit: who did what, when, and what was sent, superseded or not.</summary>
/// <param name="Event">What happened.</param>
/// <param name="Operation">By which operation: method and path.</param>
/// <param name="Body">What was recorded, as JSON; empty when the entry only says that something happened.</param>
/// <param name="Hash">Hash of the entry in the chain.</param>
public sealed record HistoryEntry(StoreEvent Event, string Operation, string Body, string Hash);
