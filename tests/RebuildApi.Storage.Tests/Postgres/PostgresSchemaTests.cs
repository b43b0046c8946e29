using System.Collections.Immutable;
using RebuildApi.Storage.Postgres;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Tests.Postgres;

public class PostgresSchemaTests
{
    private static readonly ImmutableArray<Migration> Shipped = Migration.Shipped(Migration.Postgres);

    private static ImmutableArray<Migration> Next(string sql) => Shipped.Add(new Migration(Shipped[^1].Number + 1, "9999-next", sql));

    [PostgresFact]
    public async Task A_newer_database_is_refused_and_an_older_one_is_not_opened_for_reading_only()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await temp.Close();
        var next = Next("CREATE TABLE shelf (shop TEXT NOT NULL)");

        Assert.Equal("older-schema", Assert.Throws<StorageUnavailableException>(() => PostgresStore.Open(temp.Options with { ReadOnly = true }, next)).Code);
        await PostgresStore.Open(temp.Options, next).DisposeAsync();
        Assert.Equal("newer-schema", Assert.Throws<StorageUnavailableException>(() => PostgresStore.Open(temp.Options)).Code);
    }

    [PostgresFact]
    public async Task An_upgrade_that_fails_leaves_everything_as_it_was()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await temp.Close();

        Assert.ThrowsAny<Exception>(() => PostgresStore.Open(temp.Options, Next("CREATE TABLE shelf (shop TEXT); CREATE TABLE shelf (shop TEXT)")));

        Assert.NotNull(await temp.Store.Unit("u1", default));
        Assert.True((await temp.Store.Health(default)).Ready);
        Assert.Empty(temp.Ask("SELECT relname::text FROM pg_class WHERE relname = 'shelf' AND relnamespace = current_schema()::regnamespace"));
    }

    [PostgresFact]
    public async Task Copies_that_start_at_once_over_an_empty_database_make_it_once()
    {
        await using var temp = new TempStore();

        var stores = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => PostgresStore.Open(temp.Options))));

        foreach (var store in stores)
            await store.DisposeAsync();
        Assert.Equal([$"{Shipped.Length}"], temp.Ask("SELECT COUNT(*)::text FROM migration"));
    }

    [PostgresFact]
    public async Task The_tables_of_another_program_are_left_alone()
    {
        await using var temp = new TempStore();
        temp.Meddle("CREATE TABLE song (title TEXT)");

        Assert.Equal("not-ours", Assert.Throws<StorageUnavailableException>(() => temp.Store).Code);
        Assert.Equal(["song"], temp.Ask("SELECT relname::text FROM pg_class WHERE relkind = 'r' AND relnamespace = current_schema()::regnamespace"));
    }

    /// <summary>So that rows can be spread over machines by shop, each of them with everything that it points to.</summary>
    [PostgresFact]
    public async Task Every_key_and_every_pointer_begins_with_the_shop_and_every_table_is_fenced()
    {
        await using var temp = new TempStore();
        await temp.Write(_ => { });

        var tables = temp.Ask(
            """
            SELECT t.relname || ': ' || (SELECT a.attname FROM pg_index i JOIN pg_attribute a ON a.attrelid = t.oid AND a.attnum = i.indkey[0] WHERE i.indrelid = t.oid AND i.indisprimary)
                || ', ' || COALESCE((SELECT string_agg(DISTINCT a.attname || '>' || b.attname, ' ') FROM pg_constraint f
                    JOIN pg_attribute a ON a.attrelid = f.conrelid AND a.attnum = f.conkey[1] JOIN pg_attribute b ON b.attrelid = f.confrelid AND b.attnum = f.confkey[1]
                    WHERE f.conrelid = t.oid AND f.contype = 'f'), 'shop>shop')
                || ', ' || (t.relrowsecurity AND t.relforcerowsecurity AND EXISTS (SELECT 1 FROM pg_policy p WHERE p.polrelid = t.oid))
            FROM pg_class t WHERE t.relkind = 'r' AND t.relnamespace = current_schema()::regnamespace AND t.relname <> 'migration'
            """);

        Assert.True(tables.Count > 30, $"only {tables.Count} tables");
        Assert.All(tables, table => Assert.EndsWith(": shop, shop>shop, true", table, StringComparison.Ordinal));
    }

    [PostgresFact]
    public async Task Pages_are_looked_up_in_their_order_also_behind_the_fence()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());

        var plan = string.Join('\n', temp.AskAsService(
            "SET enable_seqscan = off", "EXPLAIN SELECT u.version FROM unit u WHERE u.shop = 'main' AND u.id > 'a' ORDER BY u.id LIMIT 10"));

        Assert.Matches(@"Index (Only )?Scan using unit_pkey[\s\S]*Index Cond: .*id > 'a'", plan);
        Assert.DoesNotContain("Sort", plan, StringComparison.Ordinal);
    }
}
