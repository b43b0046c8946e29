namespace RebuildApi.Storage.Tests;

public class TransferTests
{
    private static async Task<TempStore> Filled()
    {
        var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart();
            s.Add("u1", Some.Measurement());
            s.Add("u1", Some.Finding());
            s.Add("u1", Some.Decision());
            s.KeepJudgement("u1", "aa", "bb", "quote", new byte[] { 0, 1, 255 }, "[]"u8.ToArray());
        });
        await temp.Write(s => s.Add("u1", Some.Measurement("m2", supersedes: "m1")));
        return temp;
    }

    [Fact]
    public async Task A_shop_goes_out_as_lines_and_comes_back_the_same()
    {
        await using var temp = await Filled();
        var (file, elsewhere) = (temp.PathTo("out.ndjson"), temp.Elsewhere("taken-over.db"));

        var written = PortableFile.Export(temp.Options, file, null, default);
        var read = PortableFile.Import(elsewhere, file, null, default);

        Assert.Equal(written, read);
        Assert.Equal((await temp.Store.Head(default)).Hash, read.Head);
        await using var other = Stores.Open(elsewhere);
        Assert.True((await other.VerifyChain(default)).Intact);
        Assert.Equal("m2", Assert.Single((await other.File("u1", default))!.Measurements).Id);
        Assert.Equal((await temp.Store.Unit("u1", default))!.Version, (await other.Unit("u1", default))!.Version);
        var judgement = await other.LatestJudgement("u1", null, default);
        Assert.Equal(new byte[] { 0, 1, 255 }, judgement!.Snapshot.ToArray());
        await other.Write(Requests.Plain, s => { s.Add("u1", Some.Finding("f9")); return Requests.Ok("on"); }, default);
        Assert.True((await other.VerifyChain(default)).Intact);
    }

    [Theory]
    [InlineData("cut off", "cut off")]
    [InlineData("cut in a line", "cut off")]
    [InlineData("a letter", "sums do not fit")]
    [InlineData("a row out", "sums do not fit")]
    [InlineData("not ours", "format")]
    public async Task A_file_that_was_cut_off_or_changed_is_refused_and_no_database_comes_of_it(string how, string words)
    {
        await using var temp = await Filled();
        var (file, elsewhere) = (temp.PathTo("out.ndjson"), temp.Elsewhere("taken-over.db"));
        PortableFile.Export(temp.Options, file, null, default);
        var lines = await File.ReadAllLinesAsync(file);
        string[] bad = how switch
        {
            "cut off" => lines[..^3],
            "cut in a line" => [.. lines[..^3], lines[^3][..20]],
            "a letter" => [.. lines.Select(l => l.Replace("\"third-gear\"", "\"thirt-gear\"", StringComparison.Ordinal).Replace("Ada", "Eve", StringComparison.Ordinal))],
            "a row out" => [.. lines[..^2], lines[^1]],
            _ => [.. lines.Select(l => l.Replace("rebuild-export/1", "other/1", StringComparison.Ordinal))],
        };
        await File.WriteAllTextAsync(file, string.Join('\n', bad) + (how == "cut in a line" ? "" : "\n"));

        var refusal = Assert.Throws<InvalidDataException>(() => PortableFile.Import(elsewhere, file, null, default));

        Assert.Contains(words, refusal.Message, StringComparison.Ordinal);
        Assert.False(File.Exists(elsewhere.Path));
        if (elsewhere.Database is null)
        {
            // What was cut off waits to be gone on with; of what does not fit nothing stays.
            Assert.Equal(words == "cut off", Begun(elsewhere).Length > 0);
            return;
        }

        // In a shared database what was taken over goes again, or waits to be gone on with; it never counts as a shop.
        if (words == "cut off")
            Assert.Equal("importing", Assert.Throws<StorageUnavailableException>(() => Stores.Open(elsewhere)).Code);
        else
            Assert.Empty(await Opened(elsewhere));
    }

    private static string[] Begun(StoreOptions options) => Directory.GetFiles(Path.GetDirectoryName(options.Path)!, Path.GetFileName(options.Path) + "*");

    private static async Task<IReadOnlyList<StoreEvent>> Opened(StoreOptions options)
    {
        await using var store = Stores.Open(options);
        return await store.Events(0, 10, default);
    }

    [Fact]
    public async Task A_take_over_that_was_cut_off_goes_on_when_it_is_started_again()
    {
        await using var temp = await Filled();
        var (file, elsewhere) = (temp.PathTo("out.ndjson"), temp.Elsewhere("taken-over.db"));
        var written = PortableFile.Export(temp.Options, file, null, default);
        var lines = await File.ReadAllLinesAsync(file);
        await File.WriteAllLinesAsync(file + ".half", lines[..^2]);
        Assert.Throws<InvalidDataException>(() => PortableFile.Import(elsewhere, file + ".half", null, default));

        Assert.Equal(written, PortableFile.Import(elsewhere, file, null, default));
        Assert.True(elsewhere.Database is not null || Begun(elsewhere) is [var whole] && whole == elsewhere.Path);
    }

    [Fact]
    public async Task What_was_begun_from_one_file_is_not_mixed_with_another()
    {
        await using var temp = await Filled();
        await using var other = await Filled();
        await other.Write(s => s.Add("u1", Some.Finding("f7")));
        var (half, file, elsewhere) = (other.PathTo("half.ndjson"), temp.PathTo("out.ndjson"), temp.Elsewhere("taken-over.db"));
        PortableFile.Export(other.Options, half, null, default);
        await File.WriteAllLinesAsync(half, (await File.ReadAllLinesAsync(half))[..^2]);
        var written = PortableFile.Export(temp.Options, file, null, default);
        Assert.Throws<InvalidDataException>(() => PortableFile.Import(elsewhere, half, null, default));

        Assert.Equal(written, PortableFile.Import(elsewhere, file, null, default));
        Assert.True(elsewhere.Database is not null || Begun(elsewhere) is [var whole] && whole == elsewhere.Path);
    }

    [Fact]
    public async Task Nothing_is_written_over()
    {
        await using var temp = await Filled();
        var file = temp.PathTo("out.ndjson");
        PortableFile.Export(temp.Options, file, null, default);

        Assert.Throws<IOException>(() => PortableFile.Export(temp.Options, file, null, default));
        Assert.Throws<IOException>(() => PortableFile.Import(temp.Options, file, null, default));
    }

    [Fact]
    public async Task A_shop_whose_chain_is_broken_is_not_passed_on()
    {
        await using var temp = await Filled();
        temp.Meddle("DROP TRIGGER entry_is_not_changed; UPDATE entry SET actor = 'nobody' WHERE sequence = 2");

        Assert.Equal("damaged", Assert.Throws<StorageUnavailableException>(() => PortableFile.Export(temp.Options, temp.PathTo("x"), null, default)).Code);
        Assert.False(File.Exists(temp.PathTo("x.partial")));
    }
}
