using RebuildApi.Contracts;

namespace RebuildApi.Storage.Tests;

public class RefusalTests
{
    [Fact]
    public async Task An_id_is_taken_once()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart();
            s.Add("u1", Some.Measurement());
        });

        await Assert.ThrowsAsync<DuplicateIdException>(() => temp.Write(s => s.Open(Some.Unit())));
        await Assert.ThrowsAsync<DuplicateIdException>(() => temp.Write(s => s.Add("u1", Some.Component())));
        await Assert.ThrowsAsync<DuplicateIdException>(() => temp.Write(s => s.Add("u1", Some.Measurement())));
    }

    [Fact]
    public async Task A_correction_needs_something_uncorrected_to_correct()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart();
            s.OpenWithPart("u2", "c2");
            s.Add("u1", Some.Measurement("m1"));
            s.Add("u1", Some.Measurement("m2", supersedes: "m1"));
            s.Add("u2", Some.Measurement("other", "c2"));
        });

        Assert.Equal("unknown", await Code(temp, "nothing"));
        Assert.Equal("already-superseded", await Code(temp, "m1"));
        Assert.Equal("other-unit", await Code(temp, "other"));

        static async Task<string> Code(TempStore temp, string supersedes) => (await Assert.ThrowsAsync<SupersedesException>(
            () => temp.Write(s => s.Add("u1", Some.Measurement("m3", supersedes: supersedes))))).Code;
    }

    [Fact]
    public async Task A_reading_of_an_unknown_part_or_unit_is_refused()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());

        Assert.Equal("component", (await Refused(s => s.Add("u1", Some.Measurement(component: "c9")))).Kind);
        Assert.Equal("component", (await Refused(s => s.Place("u1", Some.Placement("c9")))).Kind);
        Assert.Equal("unit", (await Refused(s => s.Add("u9", Some.Measurement()))).Kind);
        Assert.Equal("unit", (await Refused(s => s.Add("u9", Some.Component("c2")))).Kind);
        Assert.Equal("unit", (await Refused(s => s.Change(Some.Unit("u9"), null))).Kind);

        Task<UnknownIdException> Refused(Action<IWriteSession> work) => Assert.ThrowsAsync<UnknownIdException>(() => temp.Write(work));
    }

    [Fact]
    public async Task A_part_is_in_one_unit_only()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart("u1", "c1");
            s.Open(Some.Unit("u2"));
        });

        var refusal = await Assert.ThrowsAsync<ComponentPlacedElsewhereException>(
            () => temp.Write(s => s.Place("u2", Some.Placement("c1", role: PlacementRole.Fitted))));

        Assert.Equal("u1", refusal.Elsewhere);
        await temp.Write(s => s.Vacate("u1", "third-gear", 1, PlacementRole.Found));
        await temp.Write(s => s.Place("u2", Some.Placement("c1", role: PlacementRole.Fitted)));
    }

    [Fact]
    public async Task Revisions_of_a_part_follow_one_another()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());

        var refusal = await Assert.ThrowsAsync<RevisionOutOfOrderException>(() => temp.Write(s => s.Add("u1", Some.Component("c1", 3))));

        Assert.Equal(2, refusal.Expected);
    }

    [Theory]
    [InlineData("entry")]
    [InlineData("component")]
    [InlineData("measurement")]
    [InlineData("finding")]
    [InlineData("trial")]
    [InlineData("decision")]
    [InlineData("judgement")]
    [InlineData("content")]
    public async Task What_was_recorded_can_be_neither_changed_nor_removed(string table)
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart();
            s.Add("u1", Some.Measurement());
            s.Add("u1", Some.Finding());
            s.Add("u1", Some.Trial());
            s.Add("u1", Some.Decision());
            s.KeepJudgement("u1", "aa", "bb", "quote", "{}"u8.ToArray(), "[]"u8.ToArray());
        });

        var change = Assert.ThrowsAny<Exception>(() => temp.Meddle($"UPDATE {table} SET shop = 'other'"));
        var removal = Assert.ThrowsAny<Exception>(() => temp.Meddle($"DELETE FROM {table}"));

        Assert.Contains("append-only", change.Message, StringComparison.Ordinal);
        Assert.Contains("append-only", removal.Message, StringComparison.Ordinal);
    }
}
