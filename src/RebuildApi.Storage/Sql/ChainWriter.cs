namespace RebuildApi.Storage.Sql;

/// <summary>Appends to the chain inside the writer's transaction. Undoing a change puts its head back where it was.</summary>
internal sealed class ChainWriter(Statements statements, string shop, TimeProvider time)
{
    private const string Insert =
        """
        INSERT INTO entry (shop, sequence, at, actor, operation, kind, unit, id, body, previous, hash, form)
        VALUES (@shop, @sequence, @at, @actor, @operation, @kind, @unit, @id, @body, @previous, @hash, @form)
        """;

    /// <summary>The end of the chain as this transaction sees it.</summary>
    public ChainHead Head { get; private set; } = ChainHead.Empty;

    /// <summary>The time that entries carry.</summary>
    public DateTimeOffset Now => time.GetUtcNow();

    /// <summary>Reads the head; at the beginning of each transaction, since another process may have written between.</summary>
    public void Begin() => Head = ChainHead.Read(statements.Connection, shop);

    /// <summary>Forgets what was undone.</summary>
    public void Return(ChainHead head) => Head = head;

    /// <summary>Appends one entry.</summary>
    /// <returns>Its sequence number.</returns>
    public long Append(WriteRequest request, string kind, string unit, string id, string body)
    {
        var link = new ChainLink(
            shop, Head.Sequence + 1, Stamp.Of(Now), request.Actor, request.Operation, kind, unit, id, body, Head.Hash, "", ChainLink.Apart).Sealed();
        statements.Run(
            Insert,
            ("shop", shop), ("sequence", link.Sequence), ("at", link.At), ("actor", link.Actor), ("operation", link.Operation),
            ("kind", kind), ("unit", unit), ("id", id), ("body", body), ("previous", link.Previous), ("hash", link.Hash), ("form", link.Form));
        Head = new ChainHead(link.Sequence, link.Hash);
        return link.Sequence;
    }
}
