using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;

namespace RebuildApi.Storage.Tests;

public class ErasureTests
{
    private const string Name = "Mrs Invented";

    private static readonly ErasureOrder Order = new("e1", "u1", Name, "Ada", Files: false);

    private static Task<StoredAnswer> Erase(TempStore temp, bool dryRun = false) => temp.Write(Requests.Plain with { DryRun = dryRun }, s => s.Erase(Order));

    [Fact]
    public async Task A_text_that_names_a_customer_stands_apart_behind_a_seal_that_anybody_can_work_out()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());

        var record = (await temp.Store.AuditRecord(1, default))!;

        Assert.DoesNotContain(Name, record.Body, StringComparison.Ordinal);
        Assert.Contains(Name, record.Told, StringComparison.Ordinal);
        var apart = record.Apart["customer"];
        // SHA-256 is FIPS 180-4; over the random bytes and the text, as the record says.
        var seal = Convert.ToHexStringLower(SHA256.HashData([.. Convert.FromHexString(apart.Salt), .. Encoding.UTF8.GetBytes(apart.Text)]));
        Assert.Equal("sealed:" + seal, (string)JsonNode.Parse(record.Body)!["customer"]!);
        Assert.Equal(Name, (await temp.Store.Unit("u1", default))!.Customer);
    }

    [Fact]
    public async Task Two_equal_texts_have_different_seals()
    {
        await using var temp = new TempStore();
        await temp.Write(s => { s.Open(Some.Unit("u1")); s.Open(Some.Unit("u2")); });

        var seals = new List<string>();
        foreach (var sequence in new[] { 1L, 2L })
            seals.Add((string)JsonNode.Parse((await temp.Store.AuditRecord(sequence, default))!.Body)!["customer"]!);

        Assert.NotEqual(seals[0], seals[1]);
    }

    [FileFact]
    public async Task What_was_erased_is_in_no_file_any_more_and_the_chain_stands_with_the_same_hashes()
    {
        await using var temp = new TempStore();
        await Fill(temp);
        var noted = (await temp.Store.Head(default)).Hash;
        Assert.Contains(Name, string.Concat(await Files(temp)), StringComparison.Ordinal);

        await Erase(temp);

        var unit = (await temp.Store.Unit("u1", default))!;
        Assert.Equal((Erasure.Text, Erasure.Text), (unit.Customer, unit.Words));
        Assert.Empty(await temp.Store.Customers(default));
        Assert.All(await temp.Store.History("u1", 0, 100, default), e => Assert.DoesNotContain(Name, e.Body, StringComparison.Ordinal));
        var chain = await temp.Store.VerifyChain(new ChainQuestion(noted), default);
        Assert.True(chain.Intact, chain.Why);
        Assert.NotNull(chain.Noted);
        Assert.Equal([1L], Assert.Single(chain.Erasures).Entries.AsEnumerable());
        Assert.All(await Files(temp), bytes => Assert.DoesNotContain(Name, bytes, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Trying_it_keeps_everything()
    {
        await using var temp = new TempStore();
        await Fill(temp);

        await Erase(temp, dryRun: true);

        Assert.Equal(Name, (await temp.Store.Unit("u1", default))!.Customer);
        Assert.Empty((await temp.Store.VerifyChain(default)).Erasures);
    }

    [Fact]
    public async Task Another_customers_texts_stay_and_so_do_those_of_a_unit_that_changed_hands()
    {
        await using var temp = new TempStore();
        await Fill(temp);
        await temp.Write(s =>
        {
            s.Change(s.Unit("u1")! with { Customer = "Mrs Invented & Son", Words = "now it whines" }, null);
            s.Open(Some.Unit("u2"));
        });

        await Erase(temp);

        var unit = (await temp.Store.Unit("u1", default))!;
        Assert.Equal(("Mrs Invented & Son", "now it whines"), (unit.Customer, unit.Words));
        Assert.Equal(Name, (await temp.Store.Unit("u2", default))!.Customer);
        Assert.Equal(["u2"], (await temp.Store.UnitsOfCustomer(Name, default)).AsEnumerable());
    }

    [Fact]
    public async Task A_reason_goes_only_when_the_name_stands_in_it_and_a_name_in_the_work_itself_is_pointed_out()
    {
        await using var temp = new TempStore();
        await Fill(temp);
        await temp.Write(s =>
        {
            s.Add("u1", Some.Decision("d2") with { Reason = "mrs invented wants it so" });
            s.Add("u1", Some.Finding("f2") with { Note = "as Mrs Invented said" });
        });
        ErasureDone? done = null;
        await temp.Write(s => done = s.Erase(Order));

        var decisions = (await temp.Store.File("u1", default))!.Decisions;
        Assert.Equal(["seen worse", Erasure.Text], decisions.Select(d => d.Reason));
        Assert.Equal("finding", Assert.Single(done!.Mentions).Kind);
    }

    [Fact]
    public async Task An_answer_that_is_kept_for_a_repeated_request_loses_the_text_and_is_still_known_again()
    {
        await using var temp = new TempStore();
        var taken = Requests.Keyed("k");
        await temp.Store.Write(taken, s => { s.Open(Some.Unit()); return Requests.Ok("{\"id\":\"u1\",\"customer\":\"Mrs Invented\"}"); }, default);

        await Erase(temp);
        var again = await temp.Write(taken, s => s.Open(Some.Unit()));

        Assert.True(again.Replayed);
        Assert.Equal("{\"id\":\"u1\",\"customer\":\"(erased)\"}", again.Text());
    }

    [Theory]
    [InlineData("a text put in the place of another", "UPDATE personal SET body = replace(body, 'Mrs Invented', 'Mr Other')", 1, "changed")]
    [InlineData("a text gone without an erasure", "DELETE FROM personal", 1, "no erasure names it")]
    [InlineData("a tag changed beside it", "UPDATE entry SET body = replace(body, 'tag u1', 'tag u9') WHERE sequence = 1", 1, "changed after it was written")]
    [InlineData("called an old entry", "UPDATE entry SET form = 1, body = replace(body, 'tag u1', 'tag u9') WHERE sequence = 2", 2, "older form")]
    public async Task Nothing_else_can_be_changed_under_the_cover_of_an_erasure(string how, string tampering, long sequence, string why)
    {
        await using var temp = new TempStore();
        await Fill(temp);
        await temp.Close();
        temp.Meddle($"DROP TRIGGER entry_is_not_changed; DROP TRIGGER personal_is_not_changed; DROP TRIGGER personal_is_not_removed; {tampering}");

        var chain = await temp.Store.VerifyChain(default);

        Assert.True(sequence == chain.FirstBroken, how);
        Assert.Contains(why, chain.Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("UPDATE entry SET body = replace(body, 'tag u1', 'tag u9') WHERE sequence = 1", 1)]
    [InlineData("INSERT INTO personal (shop, sequence, body) VALUES ('main', 1, '{\"customer\":{\"salt\":\"00\",\"text\":\"x\"}}')", 1)]
    public async Task An_entry_whose_texts_were_erased_is_held_against_its_hash_as_before(string tampering, long sequence)
    {
        await using var temp = new TempStore();
        await Fill(temp);
        await Erase(temp);
        await temp.Close();
        temp.Meddle($"DROP TRIGGER entry_is_not_changed; {tampering}");

        Assert.Equal(sequence, (await temp.Store.VerifyChain(default)).FirstBroken);
    }

    [Theory]
    [InlineData("UPDATE entry SET body = replace(body, 'tag u1', 'tag u9') WHERE sequence = 1")]
    [InlineData("DELETE FROM personal WHERE sequence = 1")]
    public async Task The_database_itself_refuses_what_no_erasure_names(string tampering)
    {
        await using var temp = new TempStore();
        await Fill(temp);

        Assert.ThrowsAny<Exception>(() => temp.Meddle(tampering));
    }

    [Fact]
    public async Task In_entries_of_an_earlier_edition_the_text_goes_from_the_body_and_the_erasure_vouches_for_what_stands()
    {
        await using var temp = new TempStore();
        await Fill(temp);
        await temp.Close();
        OldEntries.Make(temp);
        Assert.True((await temp.Store.VerifyChain(default)).Intact);
        var hash = (await temp.Store.AuditRecord(1, default))!.Entry.Hash;

        await Erase(temp);

        var chain = await temp.Store.VerifyChain(default);
        Assert.True(chain.Intact, chain.Why);
        Assert.Equal(1, Assert.Single(chain.Erasures).InBody);
        Assert.Equal(hash, (await temp.Store.AuditRecord(1, default))!.Entry.Hash);
        Assert.Equal(Erasure.Text, (await temp.Store.Unit("u1", default))!.Customer);
        Assert.All(await Files(temp), bytes => Assert.DoesNotContain(Name, bytes, StringComparison.Ordinal));

        await temp.Close();
        temp.Meddle("DROP TRIGGER entry_is_not_changed; UPDATE entry SET body = replace(body, 'tag u1', 'tag u9') WHERE sequence = 1");
        Assert.Equal(1, (await temp.Store.VerifyChain(default)).FirstBroken);
    }

    [Fact]
    public async Task An_erasure_goes_along_to_another_database()
    {
        await using var temp = new TempStore();
        await Fill(temp);
        await temp.Write(s => s.Open(Some.Unit("u2")));
        await Erase(temp);
        var file = temp.PathTo("out.ndjson");

        PortableFile.Export(temp.Options, file, null, default);
        var elsewhere = temp.Elsewhere("other.db");
        PortableFile.Import(elsewhere, file, null, default);

        await using var other = Stores.Open(elsewhere);
        Assert.Equal(Erasure.Text, (await other.Unit("u1", default))!.Customer);
        Assert.Equal(Name, (await other.Unit("u2", default))!.Customer);
        Assert.Single((await other.VerifyChain(default)).Erasures);
    }

    private static Task<StoredAnswer> Fill(TempStore temp) => temp.Write(s =>
    {
        s.OpenWithPart();
        s.Add("u1", Some.Measurement());
        s.Add("u1", Some.Decision());
    });

    private static Task<string[]> Files(TempStore temp) => Task.WhenAll(Directory.GetFiles(Path.GetDirectoryName(temp.Options.Path)!, "shop.db*").Select(Bytes));

    // Letter by letter, so that a name is found wherever it lies in a page.
    private static async Task<string> Bytes(string file)
    {
        await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var reader = new StreamReader(stream, Encoding.Latin1);
        return await reader.ReadToEndAsync();
    }
}
