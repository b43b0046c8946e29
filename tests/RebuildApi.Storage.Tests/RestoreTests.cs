using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Storage.Tests;

public class RestoreTests
{
    [FileFact]
    public async Task A_restored_database_is_as_it_was_when_it_was_copied_and_the_other_is_kept()
    {
        await using var temp = new TempStore();
        var copy = await CopyWithOneUnit(temp);
        await temp.Write(s => s.Open(Some.Unit("u2")));
        await temp.Close();

        var report = SqliteStore.Restore(temp.Options, copy, dryRun: false);

        Assert.True(report.Verified);
        Assert.NotNull(await temp.Store.Unit("u1", default));
        Assert.Null(await temp.Store.Unit("u2", default));
        var replaced = Directory.GetFiles(Path.GetDirectoryName(temp.Options.Path)!, "shop.db.replaced-*Z").Single();
        await using var before = SqliteStore.Open(temp.Options with { Path = replaced });
        Assert.NotNull(await before.Unit("u2", default));
    }

    [FileFact]
    public async Task Trying_a_restoration_touches_nothing()
    {
        await using var temp = new TempStore();
        var copy = await CopyWithOneUnit(temp);
        await temp.Write(s => s.Open(Some.Unit("u2")));
        await temp.Close();

        var report = SqliteStore.Restore(temp.Options, copy, dryRun: true);

        Assert.True(report.Verified);
        Assert.NotNull(await temp.Store.Unit("u2", default));
    }

    [FileFact]
    public async Task A_copy_that_does_not_verify_replaces_nothing()
    {
        await using var temp = new TempStore();
        var copy = await CopyWithOneUnit(temp);
        await temp.Close();
        var bytes = await File.ReadAllBytesAsync(copy);
        await File.WriteAllBytesAsync(copy, bytes[..(bytes.Length / 2)]);

        var report = SqliteStore.Restore(temp.Options, copy, dryRun: false);

        Assert.False(report.Verified);
        Assert.NotNull(await temp.Store.Unit("u1", default));
    }

    [FileFact]
    public async Task A_database_in_use_is_not_replaced()
    {
        await using var temp = new TempStore();
        temp.Options = temp.Options with { BusyTimeout = TimeSpan.FromMilliseconds(10) };
        var copy = await CopyWithOneUnit(temp);

        var refusal = Assert.Throws<StorageUnavailableException>(() => SqliteStore.Restore(temp.Options, copy, dryRun: false));

        Assert.Equal("locked", refusal.Code);
        await temp.Write(s => s.Open(Some.Unit("u2")));
    }

    [FileFact]
    public async Task A_damaged_database_can_be_replaced()
    {
        await using var temp = new TempStore();
        var copy = await CopyWithOneUnit(temp);
        await temp.Close();
        await File.WriteAllTextAsync(temp.Options.Path, "this was a database once, and then the lights went out in the shop");

        SqliteStore.Restore(temp.Options, copy, dryRun: false);

        Assert.NotNull(await temp.Store.Unit("u1", default));
    }

    private static async Task<string> CopyWithOneUnit(TempStore temp)
    {
        await temp.Write(s => s.Open(Some.Unit()));
        return (await temp.Store.Backup(temp.PathTo("copy.db"), default)).Path;
    }
}
