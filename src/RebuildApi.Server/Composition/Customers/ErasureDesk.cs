using System.Collections.Immutable;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire.Customers;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Customers;

/// <summary>Erases what names a customer, unit by unit, in one change.</summary>
public sealed class ErasureDesk(IStore store, OldCopies copies, AttachmentFolder folder, IIdSource ids)
{
    private const string Still = "Copies made before still hold it: remove those listed, and any that were carried elsewhere, such as exports, prints and mails.";

    /// <summary>Erases, or says what it would erase.</summary>
    /// <exception cref="ProblemException">No unit bears the name.</exception>
    public async Task<StoredAnswer> Run(WriteRequest request, ErasureRequest asked, CancellationToken cancellation)
    {
        var units = await store.UnitsOfCustomer(asked.Customer, cancellation);
        // Refused by the writer, which knows a request that is repeated: the first one took the name away.
        if (units.IsEmpty)
            return await store.Write(request, _ => throw new ProblemException(Problems.UnknownCustomer, "No unit bears this name, or ever did."), cancellation);
        var stand = copies.List();
        var answer = await store.Write(request, session => Answer.Created("/v1/audit?kind=erasure", Erase(session, asked, units, stand)), cancellation);
        if (!request.DryRun)
            await ErasedFiles.Sweep(store, folder, CancellationToken.None);
        return answer;
    }

    private ErasureWire Erase(IWriteSession session, ErasureRequest asked, ImmutableArray<string> units, ImmutableArray<CopyWire> stand)
    {
        var kept = units.Select(u => KeptBack(session, u, asked)).OfType<KeptBackWire>().ToImmutableArray();
        var done = units.Except(kept.Select(k => k.Unit), StringComparer.Ordinal)
            .Select(u => session.Erase(new ErasureOrder(ids.Next(), u, asked.Customer, asked.Person, asked.Files ?? false))).ToImmutableArray();
        return new(
            [.. done.Select(d => d.Done).OfType<Erasure>().Select(ErasedUnitWire.From)], kept,
            [.. done.SelectMany(d => d.Mentions).Select(MentionWire.From)], stand, Still);
    }

    private static KeptBackWire? KeptBack(IWriteSession session, string unit, ErasureRequest asked) =>
        session.Unit(unit) is { } there && !UnitStages.IsGone(there.Stage) ? new(unit, "in-the-shop", "It is still in the shop; hand it over or return it first.")
        : asked.Invoiced != "erase" && session.All<InvoiceLine>(unit).Length > 0 ? new(unit, "invoiced", "It was invoiced, and invoices must be kept for years in many places; say invoiced: erase when that time is over.")
        : null;
}
