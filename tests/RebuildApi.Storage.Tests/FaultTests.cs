using Microsoft.Data.Sqlite;
using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Storage.Tests;

public class FaultTests
{
    [FileFact]
    public async Task A_full_disk_refuses_readings_and_loses_none_that_it_acknowledged()
    {
        await using var temp = new TempStore();
        temp.Options = temp.Options with { MaxPages = 200 };
        await temp.Write(s => s.OpenWithPart());
        var kept = new List<string>();

        var refusal = await Assert.ThrowsAsync<StorageUnavailableException>(() => Fill(temp, kept));

        Assert.Equal("disk-full", refusal.Code);
        var health = await temp.Store.Health(default);
        Assert.False(health.Ready);
        Assert.StartsWith("disk-full", health.Reason, StringComparison.Ordinal);
        Assert.Equal(kept, (await temp.Store.File("u1", default))!.Measurements.Select(m => m.Id));
        await temp.Close();
        temp.Options = temp.Options with { MaxPages = null };
        await temp.Write(s => s.Add("u1", Some.Measurement("after")));
        Assert.True((await temp.Store.VerifyChain(default)).Intact);
    }

    [Fact]
    public async Task A_store_for_reading_only_says_so_and_still_answers()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await temp.Close();
        temp.Options = temp.Options with { ReadOnly = true };

        var refusal = await Assert.ThrowsAsync<StorageUnavailableException>(() => temp.Write(s => s.Add("u1", Some.Measurement())));

        Assert.Equal("read-only", refusal.Code);
        Assert.NotNull(await temp.Store.File("u1", default));
        Assert.False((await temp.Store.Health(default)).Ready);
    }

    [FileFact]
    public async Task A_file_that_another_program_holds_is_waited_for_and_then_given_up()
    {
        await using var temp = new TempStore();
        temp.Options = temp.Options with { BusyTimeout = TimeSpan.FromMilliseconds(10) };
        await temp.Write(s => s.OpenWithPart());
        using var other = new SqliteConnection($"Data Source={temp.Options.Path};Pooling=False");
        other.Open();
        using (other.BeginTransaction(deferred: false))
        {
            var refusal = await Assert.ThrowsAsync<StorageUnavailableException>(() => temp.Write(s => s.Add("u1", Some.Measurement())));
            Assert.Equal("locked", refusal.Code);
        }

        await temp.Write(s => s.Add("u1", Some.Measurement()));

        Assert.Single((await temp.Store.File("u1", default))!.Measurements);
    }

    [FileFact]
    public async Task A_healthy_store_is_ready()
    {
        await using var temp = new TempStore();

        var health = await temp.Store.Health(default);

        Assert.True(health.Ready);
        Assert.StartsWith("SQLite 3.", health.Engine, StringComparison.Ordinal);
        Assert.Equal(0, (await temp.Store.VerifyChain(default)).Entries);
    }

    [FileTheory]
    [InlineData(0)]
    [InlineData(4096)]
    [InlineData(40960)]
    public async Task A_damaged_file_is_refused_and_left_as_it_is(int at)
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await temp.Close();
        var bytes = await File.ReadAllBytesAsync(temp.Options.Path);
        Array.Fill(bytes, (byte)0x5A, at, 4096);
        await File.WriteAllBytesAsync(temp.Options.Path, bytes);

        var refusal = Assert.Throws<StorageUnavailableException>(() => SqliteStore.Open(temp.Options));

        Assert.Equal("damaged", refusal.Code);
        Assert.Equal(bytes, await File.ReadAllBytesAsync(temp.Options.Path));
    }

    [FileFact]
    public async Task A_torn_file_is_refused()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await temp.Close();
        var bytes = await File.ReadAllBytesAsync(temp.Options.Path);
        await File.WriteAllBytesAsync(temp.Options.Path, bytes[..(bytes.Length / 2)]);

        Assert.Equal("damaged", Assert.Throws<StorageUnavailableException>(() => SqliteStore.Open(temp.Options)).Code);
    }

    [FileFact]
    public async Task A_log_torn_anywhere_leaves_whole_changes_and_an_intact_chain()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        for (var i = 0; i < 20; i++)
            await temp.Write(s => s.Add("u1", Some.Measurement($"m{i}")));
        var log = await File.ReadAllBytesAsync(temp.Options.Path + "-wal");
        var cuts = new Random(7);

        for (var round = 0; round < 20; round++)
        {
            var copy = temp.PathTo($"torn-{round}.db");
            File.Copy(temp.Options.Path, copy);
            await File.WriteAllBytesAsync(copy + "-wal", log[..cuts.Next(log.Length)]);
            await using var store = SqliteStore.Open(temp.Options with { Path = copy });

            var chain = await store.VerifyChain(default);
            var file = await store.File("u1", default);

            Assert.True(chain.Intact, chain.Why);
            Assert.Equal(Math.Max(0, chain.Entries - 3), file?.Measurements.Length ?? 0);
        }
    }

    private static async Task Fill(TempStore temp, List<string> kept)
    {
        for (var i = 0; ; i++)
        {
            await temp.Write(s => s.Add("u1", Some.Measurement($"m{i:D5}")));
            kept.Add($"m{i:D5}");
        }
    }
}
