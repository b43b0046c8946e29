namespace RebuildApi.Storage.Tests.Postgres;

/// <summary>A shop that moves from a file to PostgreSQL and back.</summary>
public class MovingTests
{
    [PostgresFact]
    public async Task A_shop_moves_there_and_back_and_every_line_is_the_same()
    {
        await using var temp = new TempStore();
        await Fill(temp.Store);
        await Fill(temp.Store, "u9", "c9");
        var file = temp.Options with { Path = temp.PathTo("house.db"), Database = null };

        var there = PortableFile.Export(temp.Options, temp.PathTo("1"), null, default);
        var inFile = PortableFile.Import(file, temp.PathTo("1"), null, default);
        var again = PortableFile.Export(file, temp.PathTo("2"), null, default);
        var back = temp.Elsewhere("unused");
        var inDatabase = PortableFile.Import(back, temp.PathTo("2"), null, default);
        PortableFile.Export(back, temp.PathTo("3"), null, default);

        Assert.Equal((there.Rows, there.Entries, there.Head), (inFile.Rows, inFile.Entries, inFile.Head));
        Assert.Equal((again.Rows, again.Entries, again.Head), (inDatabase.Rows, inDatabase.Entries, inDatabase.Head));
        Assert.Equal(Rows(temp.PathTo("1")), Rows(temp.PathTo("2")));
        Assert.Equal(Rows(temp.PathTo("1")), Rows(temp.PathTo("3")));
        await using var moved = Stores.Open(back);
        Assert.True((await moved.VerifyChain(default)).Intact);
        await moved.Write(Requests.Plain, s => { s.Add("u1", Some.Finding("f9")); return Requests.Ok(""); }, default);
        Assert.Equal(there.Entries + 1, (await moved.Head(default)).Sequence);
    }

    [PostgresFact]
    public async Task A_shop_is_taken_over_beside_others_and_another_of_the_same_name_never()
    {
        await using var temp = new TempStore();
        await Fill(temp.Store);
        PortableFile.Export(temp.Options, temp.PathTo("1"), null, default);
        var shared = temp.Elsewhere("unused");
        await using var branch = Stores.Open(shared with { Shop = "branch" });
        await Fill(branch);

        PortableFile.Import(shared, temp.PathTo("1"), null, default);

        Assert.Throws<IOException>(() => PortableFile.Import(shared, temp.PathTo("1"), null, default));
        Assert.True((await branch.VerifyChain(default)).Intact);
        Assert.Equal(5, (await branch.Head(default)).Sequence);
    }

    [PostgresFact]
    public async Task A_file_that_was_cut_off_gives_way_to_another_one()
    {
        await using var temp = new TempStore();
        await Fill(temp.Store);
        PortableFile.Export(temp.Options, temp.PathTo("old"), null, default);
        await Fill(temp.Store, "u2", "c2");
        temp.Time.Advance(TimeSpan.FromHours(1));
        var newer = PortableFile.Export(temp.Options, temp.PathTo("new"), null, default);
        var elsewhere = temp.Elsewhere("unused");
        await File.WriteAllLinesAsync(temp.PathTo("half"), (await File.ReadAllLinesAsync(temp.PathTo("old")))[..^2]);
        Assert.Throws<InvalidDataException>(() => PortableFile.Import(elsewhere, temp.PathTo("half"), null, default));

        Assert.Equal(newer, PortableFile.Import(elsewhere, temp.PathTo("new"), null, default));

        await using var moved = Stores.Open(elsewhere);
        Assert.True((await moved.VerifyChain(default)).Intact);
    }

    private static Task<StoredAnswer> Fill(IStore store, string unit = "u1", string component = "c1") => store.Write(Requests.Plain, s =>
    {
        s.OpenWithPart(unit, component);
        s.Add(unit, Some.Measurement("m-" + unit, component));
        s.Add(unit, Some.Measurement("n-" + unit, component, supersedes: "m-" + unit));
        return Requests.Ok("");
    }, default);

    // But for the first line, which says when, and the last, whose sum covers that.
    private static string[] Rows(string path) => File.ReadAllLines(path)[1..^1];
}
