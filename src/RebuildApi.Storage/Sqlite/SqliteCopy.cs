using System.Collections.Immutable;
using Dapper;
using Microsoft.Data.Sqlite;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Sqlite;

/// <summary>Makes and checks copies of a database. Copying the file itself would be no backup: it tears under a writer.</summary>
internal sealed class SqliteCopy(string shop)
{
    private const string Counts =
        """
        SELECT 'entry' AS "table", COUNT(*) AS rows FROM entry
        UNION ALL SELECT 'unit', COUNT(*) FROM unit
        UNION ALL SELECT 'component', COUNT(*) FROM component
        UNION ALL SELECT 'placement', COUNT(*) FROM placement
        UNION ALL SELECT 'measurement', COUNT(*) FROM measurement
        UNION ALL SELECT 'finding', COUNT(*) FROM finding
        UNION ALL SELECT 'trial', COUNT(*) FROM trial
        UNION ALL SELECT 'decision', COUNT(*) FROM decision
        UNION ALL SELECT 'instrument', COUNT(*) FROM instrument
        UNION ALL SELECT 'judgement', COUNT(*) FROM judgement
        UNION ALL SELECT 'rates', COUNT(*) FROM rates
        UNION ALL SELECT 'part', COUNT(*) FROM part
        UNION ALL SELECT 'stock', COUNT(*) FROM stock
        UNION ALL SELECT 'reservation', COUNT(*) FROM reservation
        UNION ALL SELECT 'machining', COUNT(*) FROM machining
        UNION ALL SELECT 'plan', COUNT(*) FROM plan
        UNION ALL SELECT 'plan_choice', COUNT(*) FROM plan_choice
        UNION ALL SELECT 'quote', COUNT(*) FROM quote
        UNION ALL SELECT 'approval', COUNT(*) FROM approval
        UNION ALL SELECT 'invoice_line', COUNT(*) FROM invoice_line
        UNION ALL SELECT 'work', COUNT(*) FROM work
        UNION ALL SELECT 'test', COUNT(*) FROM test
        UNION ALL SELECT 'confirmation', COUNT(*) FROM confirmation
        UNION ALL SELECT 'prior', COUNT(*) FROM prior
        UNION ALL SELECT 'webhook', COUNT(*) FROM webhook
        UNION ALL SELECT 'webhook_delivery', COUNT(*) FROM webhook_delivery
        UNION ALL SELECT 'stage', COUNT(*) FROM stage
        UNION ALL SELECT 'sign_off', COUNT(*) FROM sign_off
        UNION ALL SELECT 'attachment', COUNT(*) FROM attachment
        UNION ALL SELECT 'label', COUNT(*) FROM label
        UNION ALL SELECT 'removal', COUNT(*) FROM removal
        UNION ALL SELECT 'token', COUNT(*) FROM token
        UNION ALL SELECT 'personal', COUNT(*) FROM personal
        UNION ALL SELECT 'erasure', COUNT(*) FROM erasure
        UNION ALL SELECT 'sharing', COUNT(*) FROM sharing
        """;

    private static readonly ChainReport NoChain = new(0, "", null, null);

    /// <summary>Copies one consistent moment to a new file, waits until it is on the disk, and verifies it. A bad copy does not stay.</summary>
    public BackupReport Make(SqliteConnection connection, string path, CancellationToken cancellation)
    {
        if (File.Exists(path))
            throw new IOException($"There is already a file {path}.");
        var partial = path + ".partial";
        File.Delete(partial);
        try
        {
            Write(connection, partial);
            var report = Verify(partial, cancellation);
            if (report.Verified)
                File.Move(partial, path);
            return report with { Path = path };
        }
        catch (SqliteException e)
        {
            throw SqliteFaults.Translate(e);
        }
        finally
        {
            File.Delete(partial);
        }
    }

    /// <summary>Opens a copy for reading only and checks all of it.</summary>
    public BackupReport Verify(string path, CancellationToken cancellation) => Verify(path, ChainQuestion.Plain, cancellation);

    /// <summary>The same; also answers a question of its chain.</summary>
    public BackupReport Verify(string path, ChainQuestion question, CancellationToken cancellation)
    {
        try
        {
            using var connection = SqliteFile.OpenCopy(path);
            return Check(connection, path, question, cancellation);
        }
        catch (Exception e) when (e is SqliteException or StorageUnavailableException)
        {
            var size = File.Exists(path) ? new FileInfo(path).Length : 0;
            return new BackupReport(path, size, 0, ImmutableSortedDictionary<string, long>.Empty, NoChain, [SqliteFaults.Translate(e).Message]);
        }
    }

    private static void Write(SqliteConnection connection, string path)
    {
        connection.Execute("VACUUM INTO @path", new { path });
        using var written = new FileStream(path, FileMode.Open, FileAccess.ReadWrite);
        written.Flush(flushToDisk: true);
    }

    private BackupReport Check(SqliteConnection connection, string path, ChainQuestion question, CancellationToken cancellation)
    {
        var problems = FileCheck.Thorough(connection).ToList();
        var schema = Schema.NumberOf(connection);
        if (schema == 0)
            return new BackupReport(path, new FileInfo(path).Length, 0, ImmutableSortedDictionary<string, long>.Empty, NoChain, [.. problems, "It is empty."]);
        var rows = connection.Query<(string Table, long Rows)>(Counts).ToImmutableSortedDictionary(r => r.Table, r => r.Rows, StringComparer.Ordinal);
        var chain = new ChainWalk(connection, shop).Verify(question, cancellation);
        if (!chain.Intact)
            problems.Add(FormattableString.Invariant($"Entry {chain.FirstBroken} of the chain: {chain.Why}."));
        return new BackupReport(path, new FileInfo(path).Length, schema, rows, chain, [.. problems]);
    }
}
