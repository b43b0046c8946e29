using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Storage.Tests;

public class BackupTests
{
    [Fact]
    public async Task A_copy_made_while_benches_write_verifies_and_restores()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        using var enough = new CancellationTokenSource();
        var writing = Task.Run(async () =>
        {
            for (var i = 0; !enough.IsCancellationRequested; i++)
                await temp.Write(s => s.Add("u1", Some.Measurement($"m{i}")));
        });

        for (var i = 0; i < 5; i++)
        {
            var report = await temp.Store.Backup(temp.PathTo($"copy-{i}.db"), default);

            Assert.True(report.Verified, string.Join(' ', report.Problems));
            Assert.Equal(report.Chain.Entries, report.Rows["entry"]);
            await using var restored = SqliteStore.Open(temp.Options with { Path = report.Path });
            var file = await restored.File("u1", default);
            Assert.Equal(report.Rows["measurement"], file!.Measurements.Length);
        }

        await enough.CancelAsync();
        await writing;
    }

    [Fact]
    public async Task A_copy_is_one_file_that_checking_leaves_alone()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        var made = await temp.Store.Backup(temp.PathTo("copy.db"), default);
        var bytes = await File.ReadAllBytesAsync(made.Path);

        var checkedAgain = await temp.Store.VerifyBackup(made.Path, default);

        Assert.True(checkedAgain.Verified);
        Assert.Equal(made.Chain, checkedAgain.Chain);
        Assert.Equal(bytes, await File.ReadAllBytesAsync(made.Path));
        Assert.Equal([made.Path], Directory.GetFiles(Path.GetDirectoryName(made.Path)!, "copy*"));
    }

    [Fact]
    public async Task A_copy_never_replaces_a_file()
    {
        await using var temp = new TempStore();
        await temp.Store.Backup(temp.PathTo("copy.db"), default);

        await Assert.ThrowsAsync<IOException>(async () => await temp.Store.Backup(temp.PathTo("copy.db"), default));
    }

    [Fact]
    public async Task A_torn_a_tampered_an_empty_and_a_missing_copy_do_not_verify()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        var good = await File.ReadAllBytesAsync((await temp.Store.Backup(temp.PathTo("good.db"), default)).Path);
        var torn = temp.PathTo("torn.db");
        await File.WriteAllBytesAsync(torn, good[..(good.Length / 2)]);
        var empty = temp.PathTo("empty.db");
        await File.WriteAllBytesAsync(empty, []);

        Assert.NotEmpty((await temp.Store.VerifyBackup(torn, default)).Problems);
        Assert.NotEmpty((await temp.Store.VerifyBackup(empty, default)).Problems);
        Assert.NotEmpty((await temp.Store.VerifyBackup(temp.PathTo("missing.db"), default)).Problems);

        temp.Meddle("DROP TRIGGER entry_is_not_changed; UPDATE entry SET actor = 'nobody' WHERE sequence = 2");
        var tampered = await temp.Store.Backup(temp.PathTo("tampered.db"), default);
        Assert.Equal(2, tampered.Chain.FirstBroken);
        Assert.False(tampered.Verified);
        Assert.False(File.Exists(tampered.Path));
    }
}
