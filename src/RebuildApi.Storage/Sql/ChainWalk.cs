using System.Data.Common;
using Dapper;
using RebuildApi.Storage.Sql.Personal;

namespace RebuildApi.Storage.Sql;

/// <summary>Walks the chain from its beginning and recomputes every hash, then holds the texts that stand apart and the tables against it.</summary>
internal sealed class ChainWalk(DbConnection connection, string shop)
{
    private const string Links =
        $"""
        SELECT e.shop, e.sequence, e.at, e.actor, e.operation, e.kind, e.unit, e.id, e.body, e.previous, e.hash, e.form, {PersonalSql.Column} FROM entry e
        {PersonalSql.Join} WHERE e.shop = @shop ORDER BY e.sequence
        """;

    // A bar needs no more than this to move.
    private const int Step = 500;

    public ChainReport Verify(ChainQuestion question, CancellationToken cancellation)
    {
        var head = ChainHead.Empty;
        var seals = new SealCheck();
        long? noted = null;
        var all = ChainHead.Read(connection, shop).Sequence;
        foreach (var row in connection.Query<EntryRow>(Links, new { shop }, buffered: false))
        {
            cancellation.ThrowIfCancellationRequested();
            var link = row.Link();
            if (Fault(head, link) is { } broken)
                return Report(head, noted, seals, (link.Sequence, broken));
            if (seals.Look(link, row.Personal) is { } why)
                return Report(head, noted, seals, (link.Sequence, why));
            head = new ChainHead(link.Sequence, link.Hash);
            if (link.Hash == question.NotedHead)
                noted = link.Sequence;
            if (link.Sequence % Step == 0 || link.Sequence == all)
                question.Progress?.Report(new HowFar(link.Sequence, all));
        }

        return Report(head, noted, seals, new IndexCheck(connection, shop).FirstFault(cancellation));
    }

    // What a later entry could have excused and none did counts where it was met.
    private static ChainReport Report(ChainHead head, long? noted, SealCheck seals, (long Sequence, string Why)? fault)
    {
        var first = seals.Unexcused is { } open && (fault is null || open.Sequence < fault.Value.Sequence) ? open : fault;
        return new ChainReport(head.Sequence, head.Hash, first?.Sequence, first?.Why) { Noted = first?.Sequence <= noted ? null : noted, Erasures = [.. seals.Erasures] };
    }

    private static string? Fault(ChainHead head, ChainLink link)
    {
        if (link.Sequence != head.Sequence + 1)
            return "entries before it are missing";
        return link.Previous == head.Hash ? null : "it does not follow from the entry before it";
    }
}
