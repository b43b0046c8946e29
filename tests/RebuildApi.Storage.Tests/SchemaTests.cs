using System.Collections.Immutable;
using RebuildApi.Storage.Sql;
using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Storage.Tests;

public class SchemaTests
{
    private static readonly ImmutableArray<Migration> Shipped = Migration.Shipped(Migration.Sqlite);

    private static ImmutableArray<Migration> Next(string sql) => Shipped.Add(new Migration(Shipped[^1].Number + 1, "9999-next", sql));

    [Fact]
    public void Steps_are_numbered_from_one_without_a_gap() =>
        Assert.Equal(Enumerable.Range(1, Shipped.Length), Shipped.Select(s => s.Number));

    [FileFact]
    public async Task An_upgrade_copies_the_file_first()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await temp.Close();

        await using (SqliteStore.Open(temp.Options, Next("CREATE TABLE shelf (shop TEXT NOT NULL)")))
        {
        }

        var copy = Directory.GetFiles(Path.GetDirectoryName(temp.Options.Path)!, "*.before-9999-next-*").Single();
        await using var before = SqliteStore.Open(temp.Options with { Path = copy });
        Assert.NotNull(await before.Unit("u1", default));
        Assert.Equal("newer-schema", Assert.Throws<StorageUnavailableException>(() => SqliteStore.Open(temp.Options)).Code);
    }

    [FileFact]
    public async Task An_upgrade_that_fails_leaves_the_file_as_it_was()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await temp.Close();

        Assert.ThrowsAny<Exception>(() => SqliteStore.Open(temp.Options, Next("CREATE TABLE shelf (shop TEXT); CREATE TABLE shelf (shop TEXT)")));

        Assert.NotNull(await temp.Store.Unit("u1", default));
        Assert.True((await temp.Store.Health(default)).Ready);
    }

    [FileFact]
    public async Task An_older_file_is_not_opened_for_reading_only()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await temp.Close();

        var refusal = Assert.Throws<StorageUnavailableException>(
            () => SqliteStore.Open(temp.Options with { ReadOnly = true }, Next("CREATE TABLE shelf (shop TEXT)")));

        Assert.Equal("older-schema", refusal.Code);
    }

    [FileFact]
    public async Task A_database_of_another_program_is_refused_and_left_as_it_is()
    {
        await using var temp = new TempStore();
        temp.Meddle("CREATE TABLE song (title TEXT)");
        var bytes = await File.ReadAllBytesAsync(temp.Options.Path);

        Assert.Equal("not-ours", Assert.Throws<StorageUnavailableException>(() => SqliteStore.Open(temp.Options)).Code);

        Assert.Equal(bytes, await File.ReadAllBytesAsync(temp.Options.Path));
    }

    [Theory]
    [InlineData("3.40.1", false)]
    [InlineData("3.51.2", false)]
    [InlineData("3.51.3", true)]
    [InlineData("3.53.4", true)]
    public void An_engine_that_can_damage_the_log_is_refused(string version, bool taken)
    {
        var refusal = Record.Exception(() => SqliteVersion.Require(Version.Parse(version)));

        Assert.Equal(taken ? null : "engine-too-old", (refusal as StorageUnavailableException)?.Code);
    }

    [FileFact]
    public async Task Every_table_begins_its_key_with_the_shop()
    {
        await using var temp = new TempStore();
        await temp.Write(_ => { });

        var keys = temp.Ask(
            """
            SELECT t.name || ' ' || COALESCE((SELECT c.name FROM pragma_table_info(t.name) c WHERE c.pk = 1), 'none')
            FROM sqlite_master t WHERE t.type = 'table' AND t.name <> 'migration'
            """);

        Assert.NotEmpty(keys);
        Assert.All(keys, key => Assert.EndsWith(" shop", key, StringComparison.Ordinal));
    }

    [FileFact]
    public async Task A_commit_waits_for_the_disk()
    {
        await using var temp = new TempStore();
        var file = new SqliteFile(temp.Options);
        using var connection = file.OpenWriter();

        file.PrepareToWrite(connection);

        Assert.Equal(["wal", "2", "1"], Pragmas(connection));

        static string[] Pragmas(Microsoft.Data.Sqlite.SqliteConnection c) =>
        [
            Dapper.SqlMapper.ExecuteScalar<string>(c, "PRAGMA journal_mode")!,
            Dapper.SqlMapper.ExecuteScalar<string>(c, "PRAGMA synchronous")!,
            Dapper.SqlMapper.ExecuteScalar<string>(c, "PRAGMA foreign_keys")!,
        ];
    }
}
