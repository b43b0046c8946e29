using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Tests;

public class ChainTests
{
    private static readonly ChainLink Link = new("main", 1, "t", "Ada", "POST", "unit", "u1", "u1", "{}", "", "");

    [Fact]
    public async Task Each_entry_follows_from_the_one_before()
    {
        await using var temp = new TempStore();
        await Fill(temp);

        var chain = await temp.Store.VerifyChain(default);

        Assert.True(chain.Intact, chain.Why);
        Assert.Equal(8, chain.Entries);
        Assert.Matches("^[0-9a-f]{64}$", chain.Head);
    }

    [Theory]
    [InlineData("entry", "UPDATE entry SET body = replace(body, '30.012', '30.021') WHERE sequence = 4", 4)]
    [InlineData("entry", "UPDATE entry SET actor = 'nobody' WHERE sequence = 2", 2)]
    [InlineData("entry", "PRAGMA foreign_keys = OFF; DELETE FROM entry WHERE sequence = 5", 6)]
    [InlineData("entry", "PRAGMA foreign_keys = OFF; UPDATE entry SET sequence = -sequence WHERE sequence > 6; UPDATE entry SET sequence = 15 + sequence WHERE sequence < 0", 7)]
    [InlineData("measurement", "UPDATE measurement SET component = 'c2' WHERE id = 'm1'", 4)]
    [InlineData("measurement", "DELETE FROM measurement WHERE id = 'm1'", 4)]
    [InlineData("finding", "UPDATE finding SET supersedes = 'f1' WHERE id = 'f1'", 5)]
    [InlineData("trial", "DELETE FROM trial", 6)]
    [InlineData("decision", "UPDATE decision SET subject = 'input-gear'", 7)]
    [InlineData("content", "UPDATE content SET body = X'00' WHERE sha256 = (SELECT judgement FROM judgement)", 8)]
    [InlineData("unit", "UPDATE unit SET stage = 'hand-over'", 1)]
    [InlineData("unit", "PRAGMA foreign_keys = OFF; DELETE FROM placement", 3)]
    public async Task Tampering_shows_at_the_first_entry_that_it_touches(string guarded, string tampering, long sequence)
    {
        await using var temp = new TempStore();
        await Fill(temp);
        await temp.Close();
        temp.Meddle($"DROP TRIGGER IF EXISTS {guarded}_is_not_changed; DROP TRIGGER IF EXISTS {guarded}_is_not_removed; PRAGMA foreign_keys = OFF; {tampering}");

        var chain = await temp.Store.VerifyChain(default);

        Assert.Equal(sequence, chain.FirstBroken);
    }

    [Fact]
    public void Text_moved_from_one_field_to_the_next_gives_another_hash()
    {
        var moved = Link with { Unit = "u", Id = "1u1" };

        Assert.NotEqual(Link.Computed(), moved.Computed());
    }

    /// <summary>
    /// The rule written out: SHA-256 of every field behind its length as 8 bytes, big-endian. Computed apart from the program, with
    /// Python's hashlib and struct; SHA-256 itself is FIPS 180-4.
    /// </summary>
    [Fact]
    public void The_hash_can_be_recomputed_outside_the_program() =>
        Assert.Equal("c5c05d235b774509284b1896a853b4622f6cfe14cdbcb2302229c412abb773dd", Link.Computed());

    [FileFact]
    public async Task Checking_looks_each_row_up_and_never_searches_a_table_for_it()
    {
        await using var temp = new TempStore();
        await Fill(temp);

        foreach (var table in IndexedTable.All)
        {
            var plan = temp.Plan(table.EntriesSql.Replace("@shop", "'main'", StringComparison.Ordinal));
            var lookup = Assert.Single(plan, step => step.Contains(" r USING", StringComparison.Ordinal));
            Assert.Matches(@"SEARCH r USING .*\(shop=\? AND (id|unit|number)=\?", lookup);
        }
    }

    private static Task<StoredAnswer> Fill(TempStore temp) => temp.Write(s =>
    {
        s.OpenWithPart();
        s.Add("u1", Some.Measurement());
        s.Add("u1", Some.Finding());
        s.Add("u1", Some.Trial());
        s.Add("u1", Some.Decision());
        s.KeepJudgement("u1", "aa", "bb", "quote", "{}"u8.ToArray(), "[]"u8.ToArray());
    });
}
