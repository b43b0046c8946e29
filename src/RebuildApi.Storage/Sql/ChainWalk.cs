using System.Data.Common;
using Dapper;

namespace RebuildApi.Storage.Sql;

/// <summary>Walks the chain from its beginning and recomputes every hash, then holds the tables against it.</summary>
internal sealed class ChainWalk(DbConnection connection, string shop)
{
    private const string Links =
        """
        SELECT shop, sequence, at, actor, operation, kind, unit, id, body, previous, hash FROM entry
        WHERE shop = @shop ORDER BY sequence
        """;

    // A bar needs no more than this to move.
    private const int Step = 500;

    public ChainReport Verify(ChainQuestion question, CancellationToken cancellation)
    {
        var head = ChainHead.Empty;
        long? noted = null;
        var all = ChainHead.Read(connection, shop).Sequence;
        foreach (var link in connection.Query<ChainLink>(Links, new { shop }, buffered: false))
        {
            cancellation.ThrowIfCancellationRequested();
            if (Fault(head, link) is { } why)
                return new ChainReport(head.Sequence, head.Hash, link.Sequence, why) { Noted = noted };
            head = new ChainHead(link.Sequence, link.Hash);
            if (link.Hash == question.NotedHead)
                noted = link.Sequence;
            if (link.Sequence % Step == 0 || link.Sequence == all)
                question.Progress?.Report(new HowFar(link.Sequence, all));
        }

        var fault = new IndexCheck(connection, shop).FirstFault(cancellation);
        return new ChainReport(head.Sequence, head.Hash, fault?.Sequence, fault?.Why) { Noted = noted };
    }

    private static string? Fault(ChainHead head, ChainLink link)
    {
        if (link.Sequence != head.Sequence + 1)
            return "entries before it are missing";
        if (link.Previous != head.Hash)
            return "it does not follow from the entry before it";
        return link.Computed() == link.Hash ? null : "it was changed after it was written";
    }
}
