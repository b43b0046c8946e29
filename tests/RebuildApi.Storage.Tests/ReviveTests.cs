namespace RebuildApi.Storage.Tests;

/// <summary>A restored copy must revive nothing that was taken back since.</summary>
public class ReviveTests
{
    private static AccessToken Token(string name) => new(name, "bench", new string('a', 64), DateTimeOffset.UnixEpoch, "console", null, null, null, 0);

    private static void Revoke(IWriteSession session, string name) =>
        session.Put(session.Find<AccessToken>(name)! with { Revoked = DateTimeOffset.UnixEpoch, RevokedBy = "Ada" }, null);

    private static BackupShelf ShelfOf(TempStore temp) => BackupShelf.Of(Path.GetDirectoryName(temp.Options.Path)!, null, temp.Options);

    private static async Task<Restored> Restore(TempStore temp, string backup)
    {
        await temp.Close();
        var from = ShelfOf(temp).Check(backup, ChainQuestion.Plain, default);
        return await new BackupRestore(temp.PathTo(BackupShelf.AttachmentFolder), temp.Options).Run(from, "Ada", default);
    }

    private static async Task<string> Backup(TempStore temp)
    {
        await temp.Write(s =>
        {
            s.Open(Some.Unit());
            s.Put(Token("bench-1"), 0);
            s.Put(Token("bench-2"), 0);
            s.Put(Token("old"), 0);
            Revoke(s, "old");
        });
        return (await ShelfOf(temp).Make(temp.Store, "Ada", default)).Path;
    }

    private static async Task<IEnumerable<string>> Standing(TempStore temp) =>
        (await temp.Store.All<AccessToken>(ShopFilter.Every, default)).Where(t => t.Revoked is null).Select(t => t.Name);

    [FileFact]
    public async Task A_token_that_was_revoked_since_is_revoked_again_and_the_others_go_on()
    {
        await using var temp = new TempStore();
        var backup = await Backup(temp);
        await temp.Write(s => Revoke(s, "bench-1"));

        var done = await Restore(temp, backup);

        Assert.True(done.Known);
        Assert.Equal(["bench-1"], done.Revoked.AsEnumerable());
        Assert.Equal(["bench-2"], await Standing(temp));
    }

    [FileFact]
    public async Task Where_nobody_knows_what_was_revoked_since_every_token_is()
    {
        await using var temp = new TempStore();
        var backup = await Backup(temp);
        await temp.Close();
        File.Delete(temp.Options.Path + "-wal");
        await File.WriteAllTextAsync(temp.Options.Path, "this was a database once, and then the lights went out in the shop");

        var done = await Restore(temp, backup);

        Assert.False(done.Known);
        Assert.Empty(await Standing(temp));
        Assert.Equal("all", (await temp.Store.NewestAct(Acts.Restore, default))!.Details["tokensRevoked"]);
    }

    [FileFact]
    public async Task What_stands_but_was_meddled_with_is_not_believed()
    {
        await using var temp = new TempStore();
        var backup = await Backup(temp);
        await temp.Write(s => Revoke(s, "bench-1"));
        await temp.Close();
        temp.Meddle("DROP TRIGGER entry_is_not_changed; UPDATE entry SET body = replace(body, 'bench-1', 'bench-9') WHERE sequence = 2");

        Assert.False((await Restore(temp, backup)).Known);
        Assert.Empty(await Standing(temp));
    }

    [FileFact]
    public async Task What_was_erased_since_is_erased_again()
    {
        await using var temp = new TempStore();
        var backup = await Backup(temp);
        await temp.Write(s => s.Erase(new ErasureOrder("e1", "u1", "Mrs Invented", "Ada", Files: false)));

        var done = await Restore(temp, backup);

        Assert.Equal(1, done.Erased);
        Assert.Equal(Erasure.Text, (await temp.Store.Unit("u1", default))!.Customer);
        var chain = await temp.Store.VerifyChain(default);
        Assert.True(chain.Intact, chain.Why);
        Assert.Single(chain.Erasures);
    }

    [FileTheory]
    [InlineData(true, "harbour: stock")]
    [InlineData(false, "")]
    public async Task What_was_opened_to_another_shop_and_closed_since_is_closed_again_and_all_of_it_where_nobody_knows(bool known, string opened)
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.Put(new Sharing("harbour", [Opening.Stock, Opening.Units], "Ada", DateTimeOffset.UnixEpoch, 0), 0);
            s.Put(new Sharing("quay", [Opening.Stock], "Ada", DateTimeOffset.UnixEpoch, 0), 0);
        });
        var backup = await Backup(temp);
        await temp.Write(s =>
        {
            s.Put(new Sharing("harbour", [Opening.Stock], "Ada", DateTimeOffset.UnixEpoch, 0), null);
            s.Put(new Sharing("quay", [], "Ada", DateTimeOffset.UnixEpoch, 0), null);
            s.Put(new Sharing("newer", [Opening.Units], "Ada", DateTimeOffset.UnixEpoch, 0), null);
        });
        if (!known)
        {
            await temp.Close();
            File.Delete(temp.Options.Path + "-wal");
            await File.WriteAllTextAsync(temp.Options.Path, "no database");
        }

        await Restore(temp, backup);

        var stands = await temp.Store.All<Sharing>(ShopFilter.Every, default);
        Assert.Equal(opened, string.Join(", ", stands.Where(s => !s.Opens.IsEmpty).Select(s => $"{s.Shop}: {string.Join(' ', s.Opens).ToLowerInvariant()}")));
        Assert.True((await temp.Store.VerifyChain(default)).Intact);
    }
}
