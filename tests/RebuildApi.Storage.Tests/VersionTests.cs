namespace RebuildApi.Storage.Tests;

public class VersionTests
{
    [Fact]
    public async Task A_units_version_grows_with_everything_that_happens_to_it()
    {
        await using var temp = new TempStore();
        var seen = new List<long>();
        await Step(s => s.Open(Some.Unit()));
        await Step(s => s.Add("u1", Some.Component()));
        await Step(s => s.Place("u1", Some.Placement()));
        await Step(s => s.Add("u1", Some.Measurement()));
        await Step(s => s.Add("u1", Some.Finding()));
        await Step(s => s.Add("u1", Some.Trial()));
        await Step(s => s.Add("u1", Some.Decision()));
        await Step(s => s.Change(Some.Unit(stage: "teardown"), null));

        Assert.Equal(seen.Order().Distinct(), seen);
        Assert.Equal(1, seen[0]);

        async Task Step(Action<IWriteSession> work)
        {
            await temp.Write(work);
            seen.Add((await temp.Store.Unit("u1", default))!.Version);
        }
    }

    [Fact]
    public async Task Keeping_a_judgement_leaves_the_version_alone()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.Open(Some.Unit()));

        await temp.Write(s => s.KeepJudgement("u1", "aa", "bb", "latest", "{}"u8.ToArray(), "[]"u8.ToArray()));

        Assert.Equal(1, (await temp.Store.Unit("u1", default))!.Version);
    }

    [Fact]
    public async Task A_change_of_what_someone_else_changed_meanwhile_is_refused()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.Open(Some.Unit()));
        await temp.Write(s => s.Change(Some.Unit(stage: "teardown"), 1));

        var conflict = await Assert.ThrowsAsync<VersionConflictException>(() => temp.Write(s => s.Change(Some.Unit(stage: "build"), 1)));

        Assert.Equal((1, 2), (conflict.Expected, conflict.Actual));
        Assert.Equal("teardown", (await temp.Store.Unit("u1", default))!.Stage);
    }

    [Fact]
    public async Task An_instruments_version_grows_and_guards_it()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.Put(Some.Instrument(), 0));
        await temp.Write(s => s.Put(Some.Instrument() with { Name = "the new one" }, 1));

        await Assert.ThrowsAsync<VersionConflictException>(() => temp.Write(s => s.Put(Some.Instrument(), 1)));

        var instrument = await temp.Store.Instrument("mic-1", default);
        Assert.Equal(("the new one", 2), (instrument!.Name, instrument.Version));
    }

    [Fact]
    public async Task A_reading_of_a_part_that_another_units_file_shows_raises_that_unit_too()
    {
        await using var temp = new TempStore();
        await temp.Write(s =>
        {
            s.OpenWithPart("u1", "c1");
            s.Open(Some.Unit("u2"));
            s.Place("u2", Some.Placement("c1", role: Contracts.PlacementRole.Chosen));
        });
        var before = (await temp.Store.Unit("u2", default))!.Version;

        await temp.Write(s => s.Add("u1", Some.Measurement()));

        Assert.Equal(before + 1, (await temp.Store.Unit("u2", default))!.Version);
    }
}
