using System.Collections.Immutable;

namespace RebuildApi.Storage.Tests;

public class AuditTests
{
    private static Act Approval(string sha256) =>
        new(Acts.PluginApproval, "brackenmere-4", "Ada", ImmutableSortedDictionary<string, string>.Empty.Add("sha256", sha256));

    [Fact]
    public async Task An_act_is_an_entry_of_the_chain_and_the_last_of_its_sort_is_found()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.Record(Approval("aa")));
        await temp.Write(s => s.Open(Some.Unit()));
        await temp.Write(s => s.Record(Approval("bb")));

        Assert.Equal("bb", (await temp.Store.NewestAct(Acts.PluginApproval, default))!.Details["sha256"]);
        Assert.Null(await temp.Store.NewestAct(Acts.Settings, default));
        Assert.Equal([1L, 3L], (await temp.Store.Audit(new AuditFilter(Acts.PluginApproval), 0, 10, default)).Select(e => e.Event.Sequence));
        Assert.Equal([2L], (await temp.Store.Audit(new AuditFilter(Unit: "u1"), 0, 10, default)).Select(e => e.Event.Sequence));
        Assert.True((await temp.Store.VerifyChain(default)).Intact);
    }

    [Fact]
    public async Task A_noted_head_is_found_again_until_the_end_of_the_chain_is_dropped()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.Record(Approval("aa")));
        await temp.Write(s => s.Record(Approval("bb")));
        var head = (await temp.Store.VerifyChain(default)).Head;
        var steps = new List<HowFar>();

        var later = await temp.Store.VerifyChain(new ChainQuestion(head, new Told(steps)), default);
        temp.Meddle("DROP TRIGGER entry_is_not_removed; DELETE FROM entry WHERE sequence = 2");
        var dropped = await temp.Store.VerifyChain(new ChainQuestion(head), default);

        Assert.Equal(2, later.Noted);
        Assert.Equal([new HowFar(2, 2)], steps);
        Assert.True(dropped.Intact, "a chain whose end is gone looks like a shorter chain");
        Assert.Null(dropped.Noted);
    }

    [Fact]
    public async Task Trying_an_act_records_nothing()
    {
        await using var temp = new TempStore();

        await temp.Write(Requests.Plain with { DryRun = true }, s => s.Record(Approval("aa")));

        Assert.Null(await temp.Store.NewestAct(Acts.PluginApproval, default));
    }

    private sealed class Told(List<HowFar> steps) : IProgress<HowFar>
    {
        public void Report(HowFar value) => steps.Add(value);
    }
}
