using System.Collections.Immutable;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Customers;

/// <summary>Whose texts are to be erased.</summary>
/// <param name="Customer">The name that units bear, letter for letter.</param>
/// <param name="Person">Who of the shop signs for it.</param>
/// <param name="Invoiced">What becomes of units that were invoiced: <c>keep</c>, the usual, or <c>erase</c>. How long invoices must be kept the law of the place says.</param>
/// <param name="Files">Whether photos and documents of those units go too; a file that another unit shows as well stays.</param>
public sealed record ErasureRequest(
    [Words(200)] string Customer, [Words(100)] string Person, [OneOf("keep", "erase")] string? Invoiced = null, bool? Files = null);

/// <summary>What was erased, or in a dry run would be; what was not, and where it still stands.</summary>
/// <param name="Units">What went, by unit.</param>
/// <param name="Kept">Units of the customer that were left alone, and why.</param>
/// <param name="Mentions">Entries in whose technical words the name still stands: the note of a finding, the label of a part. They are part of what was judged and can't be erased.</param>
/// <param name="Copies">Copies of the records that hold it still, as far as the service knows of them, each with when it goes.</param>
/// <param name="Note">What to do about these.</param>
public sealed record ErasureWire(
    ImmutableArray<ErasedUnitWire> Units, ImmutableArray<KeptBackWire> Kept, ImmutableArray<MentionWire> Mentions, ImmutableArray<CopyWire> Copies, string Note);

/// <summary>What went from one unit.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Erasure">Id of the erasure in the chain.</param>
/// <param name="Entries">The entries whose texts went; everything else of them stays.</param>
/// <param name="Files">SHA-256 of the photos and documents that went.</param>
public sealed record ErasedUnitWire(string Unit, string Erasure, ImmutableArray<ErasedEntryWire> Entries, ImmutableArray<string> Files)
{
    /// <summary>From the store.</summary>
    public static ErasedUnitWire From(Erasure done) => new(done.Unit, done.Id, [.. done.Entries.Select(e => new ErasedEntryWire(e.Sequence, e.Kind, e.Fields))], done.Files);
}

/// <summary>An entry whose texts went.</summary>
/// <param name="Sequence">Its number in the chain.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Fields">The fields.</param>
public sealed record ErasedEntryWire(long Sequence, string Kind, ImmutableArray<string> Fields);

/// <summary>A unit that was left alone.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Why"><c>in-the-shop</c> or <c>invoiced</c>.</param>
/// <param name="Words">The same in words, with what to do.</param>
public sealed record KeptBackWire(string Unit, string Why, string Words);

/// <summary>An entry in whose words the name still stands.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Sequence">Its number in the chain.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Id">Id of the thing.</param>
public sealed record MentionWire(string Unit, long Sequence, string Kind, string Id)
{
    /// <summary>From the store.</summary>
    public static MentionWire From(StoreEvent e) => new(e.Unit, e.Sequence, e.Kind, e.Id);
}

/// <summary>A copy of the records.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Path">Where it lies.</param>
/// <param name="Made">When it was made, UTC.</param>
/// <param name="Goes">When it goes.</param>
public sealed record CopyWire(string Name, string Path, DateTimeOffset? Made, string Goes);
