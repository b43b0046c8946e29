using System.Security.Cryptography;
using System.Text;

namespace RebuildApi.Storage.Tests;

public class BackupShelfTests
{
    private static BackupShelf ShelfOf(TempStore temp) => BackupShelf.Of(Path.GetDirectoryName(temp.Options.Path)!, null, temp.Options);

    private static string Attach(TempStore temp, string content, string? name = null)
    {
        var sha = name ?? Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(content)));
        var path = temp.PathTo(Path.Combine("attachments", sha[..2], sha + ".jpg"));
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, content);
        return path;
    }

    [Fact]
    public async Task A_backup_holds_the_database_and_the_attachments_and_says_where_the_chain_ends()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        Attach(temp, "a photo");
        File.WriteAllText(temp.PathTo("attachments/being-written.tmp"), "half");

        var made = await ShelfOf(temp).Make(temp.Store, "Ada", default);
        var read = ShelfOf(temp).Check(made.Path, ChainQuestion.Plain, default);

        Assert.True(read.Verified, string.Join(' ', read.Problems));
        Assert.Equal((3L, (await temp.Store.Head(default)).Hash, "Ada"), (made.Manifest!.Entries, made.Manifest.Head, made.Manifest.By));
        Assert.Single(made.Manifest.Attachments);
        Assert.Equal(made.Name, Assert.Single(ShelfOf(temp).List()).Name);
        Assert.Equal("20260302T120000000Z", made.Name);
    }

    [Fact]
    public async Task What_was_changed_or_lost_in_a_backup_afterwards_is_named()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        Attach(temp, "a photo");
        Attach(temp, "another");
        var made = await ShelfOf(temp).Make(temp.Store, "Ada", default);
        File.Delete(Path.Combine(made.Path, made.Manifest!.Attachments[0].Name));
        await File.AppendAllTextAsync(Path.Combine(made.Path, made.Manifest.Attachments[1].Name), "!");
        await File.AppendAllTextAsync(Path.Combine(made.Path, BackupShelf.Database), "!");

        var read = ShelfOf(temp).Check(made.Path, ChainQuestion.Plain, default);

        Assert.Contains($"{made.Manifest.Attachments[0].Name} is missing.", read.Problems);
        Assert.Equal(2, read.Problems.Count(p => p.Contains("hash is not the one", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_manifest_that_points_out_of_its_folder_is_not_followed()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        var made = await ShelfOf(temp).Make(temp.Store, "Ada", default);
        var manifest = Path.Combine(made.Path, "manifest.json");
        await File.WriteAllTextAsync(manifest, (await File.ReadAllTextAsync(manifest)).Replace("\"shop.db\"", "\"../../shop.db\"", StringComparison.Ordinal));

        Assert.Contains("../../shop.db lies outside the backup.", ShelfOf(temp).Check(made.Path, ChainQuestion.Plain, default).Problems);
    }

    [Fact]
    public async Task A_damaged_attachment_fails_the_backup_and_nothing_stays()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        Attach(temp, "not what the name says", new string('a', 64));

        var refusal = await Assert.ThrowsAsync<StorageUnavailableException>(() => ShelfOf(temp).Make(temp.Store, "Ada", default));

        Assert.Equal("damaged", refusal.Code);
        Assert.Empty(Directory.GetDirectories(ShelfOf(temp).Folder));
    }

    [Fact]
    public async Task Only_the_oldest_of_those_made_by_themselves_are_removed()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        foreach (var by in new[] { "Ada", BackupManifest.BySchedule, BackupManifest.BySchedule, BackupManifest.BySchedule })
        {
            await ShelfOf(temp).Make(temp.Store, by, default);
            temp.Time.Advance(TimeSpan.FromDays(1));
        }

        var gone = ShelfOf(temp).Prune(2);

        Assert.Equal("20260303T120000000Z", Assert.Single(gone));
        Assert.Equal(["schedule", "schedule", "Ada"], ShelfOf(temp).List().Select(b => b.Manifest!.By));
    }

    [FileFact]
    public async Task Restoring_brings_records_and_attachments_back_keeps_what_stood_there_and_is_on_record()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        var photo = Attach(temp, "a photo");
        var made = await ShelfOf(temp).Make(temp.Store, "Ada", default);
        await temp.Write(s => s.Open(Some.Unit("u2")));
        var replaced = (await temp.Store.Head(default)).Hash;
        await temp.Close();
        File.Delete(photo);
        var from = ShelfOf(temp).Check(made.Path, ChainQuestion.Plain, default);
        var restore = new BackupRestore(temp.PathTo(BackupShelf.AttachmentFolder), temp.Options);

        var steps = await restore.Steps(from);
        Assert.Contains(steps, s => s.Contains("copy 1 of 1 attachments", StringComparison.Ordinal));
        Assert.False(File.Exists(photo));
        await restore.Run(from, "Ada", default);

        Assert.Equal("a photo", await File.ReadAllTextAsync(photo));
        Assert.Null(await temp.Store.Unit("u2", default));
        var act = await temp.Store.NewestAct(Acts.Restore, default);
        Assert.Equal((made.Manifest!.Head, replaced), (act!.Details["head"], act.Details["replacedHead"]));
        Assert.True((await temp.Store.VerifyChain(new ChainQuestion(made.Manifest.Head), default)) is { Intact: true, Noted: 3 });
        Assert.Single(Directory.GetFiles(Path.GetDirectoryName(temp.Options.Path)!, "shop.db.replaced-*Z"));
    }

    [FileFact]
    public async Task A_restore_that_was_cut_off_never_starts_an_empty_shop()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await temp.Close();
        File.Move(temp.Options.Path, temp.Options.Path + ".restoring");

        Assert.Equal("damaged", Assert.Throws<StorageUnavailableException>(() => temp.Store).Code);
    }
}
