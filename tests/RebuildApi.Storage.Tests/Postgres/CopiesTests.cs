using System.Diagnostics;
using RebuildApi.Storage.Postgres;
using Xunit.Abstractions;

namespace RebuildApi.Storage.Tests.Postgres;

/// <summary>Several copies of the service over one shop.</summary>
public class CopiesTests(ITestOutputHelper output)
{
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(15);

    // Waits for what other copies do go by the real clock.
    private static StoreOptions Real(TempStore temp) => temp.Options with { Time = TimeProvider.System };

    [PostgresFact]
    public async Task What_one_copy_commits_the_others_hear()
    {
        await using var temp = new TempStore();
        await using var other = Stores.Open(Real(temp));
        var waiting = other.NextEvent(0, default);

        var clock = Stopwatch.StartNew();
        await temp.Write(s => s.OpenWithPart());

        Assert.Equal(3, await waiting.WaitAsync(Soon));
        output.WriteLine($"heard after {clock.Elapsed.TotalMilliseconds:F0} ms");
        Assert.Equal([1, 2, 3], (await other.Events(0, 10, default)).Select(e => e.Sequence));
    }

    [PostgresFact]
    public async Task A_word_that_was_lost_is_caught_up_with()
    {
        await using var temp = new TempStore();
        await using var other = Stores.Open(Real(temp));
        await temp.Write(s => s.OpenWithPart());
        await other.NextEvent(2, default).WaitAsync(Soon);
        temp.Meddle(Terminate);

        await Patiently(() => temp.Write(s => s.Add("u1", Some.Measurement())));

        Assert.Equal(4, await other.NextEvent(3, default).WaitAsync(Soon));
    }

    [PostgresFact]
    public async Task Four_copies_that_write_at_once_make_one_chain_without_a_gap()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        var copies = Enumerable.Range(0, 4).Select(_ => Stores.Open(Real(temp))).ToArray();

        await Task.WhenAll(copies.SelectMany((copy, c) => Enumerable.Range(0, 40).Select(i => copy.Write(
            Requests.Plain, s => { s.Add("u1", Some.Measurement($"m{c}-{i}")); return Requests.Ok(""); }, default))));

        var chain = await temp.Store.VerifyChain(default);
        Assert.True(chain.Intact, chain.Why);
        Assert.Equal(163, chain.Entries);
        foreach (var copy in copies)
            await copy.DisposeAsync();
    }

    [PostgresFact]
    public async Task A_key_that_one_copy_has_answered_gets_the_same_answer_of_another()
    {
        await using var temp = new TempStore();
        await using var other = Stores.Open(temp.Options);
        await temp.Write(Requests.Keyed("k"), s => s.OpenWithPart());

        var again = await other.Write(Requests.Keyed("k"), _ => throw new InvalidOperationException("done twice"), default);

        Assert.True(again.Replayed);
        await Assert.ThrowsAsync<IdempotencyKeyReusedException>(() => other.Write(Requests.Keyed("k", "bb"), _ => Requests.Ok(""), default));
    }

    [PostgresFact]
    public async Task Of_copies_that_send_one_key_at_once_one_does_the_work()
    {
        await using var temp = new TempStore();
        var copies = Enumerable.Range(0, 4).Select(_ => Stores.Open(temp.Options)).ToArray();

        var answers = await Task.WhenAll(copies.Select(copy => copy.Write(
            Requests.Keyed("once"), s => { s.OpenWithPart(); return Requests.Ok("mine"); }, default)));

        Assert.Single(answers, a => !a.Replayed);
        foreach (var copy in copies)
            await copy.DisposeAsync();
    }

    [PostgresFact]
    public async Task Of_copies_that_change_one_version_one_wins()
    {
        await using var temp = new TempStore();
        await using var other = Stores.Open(Real(temp));
        await temp.Write(s => s.Open(Some.Unit()));
        await temp.Write(s => s.Change(Some.Unit(stage: "pre-strip"), 1));

        await Assert.ThrowsAsync<VersionConflictException>(() => other.Write(
            Requests.Plain, s => { s.Change(Some.Unit(stage: "teardown"), 1); return Requests.Ok(""); }, default));
    }

    [PostgresFact]
    public async Task A_duty_has_one_copy_and_goes_over_to_the_next()
    {
        await using var temp = new TempStore();
        await using var first = Stores.Open(Real(temp));
        await using var second = Stores.Open(Real(temp));
        await using var branch = Stores.Open(Real(temp) with { Shop = "branch" });
        var duty = await first.TakeUp("webhooks", default);
        var waiting = second.TakeUp("webhooks", default);
        await using var others = await branch.TakeUp("webhooks", default).WaitAsync(Soon);

        await Task.Delay(TimeSpan.FromSeconds(1.5));
        Assert.False(waiting.IsCompleted);
        await duty.DisposeAsync();

        await (await waiting.WaitAsync(Soon)).DisposeAsync();
    }

    [PostgresFact]
    public async Task A_duty_whose_connection_dies_is_lost_and_free()
    {
        await using var temp = new TempStore();
        await using var first = Stores.Open(Real(temp));
        await using var second = Stores.Open(Real(temp));
        await using var duty = await first.TakeUp("webhooks", default);

        temp.Meddle(Terminate);

        await using var next = await second.TakeUp("webhooks", default).WaitAsync(Soon);
        await Task.Delay(Soon, duty.Lost).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        Assert.True(duty.Lost.IsCancellationRequested);
    }

    [PostgresFact]
    public async Task After_every_connection_was_cut_reading_and_writing_go_on_by_themselves()
    {
        await using var temp = new TempStore();
        await temp.Write(s => s.OpenWithPart());
        await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => temp.Store.Unit("u1", default).AsTask()));
        temp.Meddle(Terminate);

        Assert.NotNull(await temp.Store.Unit("u1", default));
        await temp.Write(s => s.Add("u1", Some.Measurement()));

        Assert.True((await temp.Store.Health(default)).Ready);
        Assert.True((await temp.Store.VerifyChain(default)).Intact);
    }

    [PostgresFact]
    public async Task A_database_that_is_not_there_is_said_to_be_unreachable()
    {
        await using var temp = new TempStore();
        var gone = new Npgsql.NpgsqlConnectionStringBuilder(temp.Options.Database) { Port = 1 };

        Assert.Equal("unreachable", Assert.Throws<StorageUnavailableException>(() => PostgresStore.Open(temp.Options with { Database = gone.ToString() })).Code);
    }

    [PostgresFact]
    public async Task A_shop_whose_writing_is_held_elsewhere_is_waited_for_and_then_given_up()
    {
        await using var temp = new TempStore();
        temp.Options = temp.Options with { BusyTimeout = TimeSpan.FromMilliseconds(20) };
        await using var other = Stores.Open(Real(temp));
        await temp.Write(s => s.OpenWithPart());
        using var gate = new ManualResetEventSlim();
        var holding = other.Write(Requests.Plain, _ => { gate.Wait(); return Requests.Ok(""); }, default);
        await Task.Delay(300);

        var refusal = await Assert.ThrowsAsync<StorageUnavailableException>(() => temp.Write(s => s.Add("u1", Some.Measurement())));

        Assert.Equal("locked", refusal.Code);
        gate.Set();
        await holding;
        await temp.Write(s => s.Add("u1", Some.Measurement()));
    }

    private const string Terminate =
        "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE pid <> pg_backend_pid() AND usename = 'rebuild' AND application_name = current_schema()";

    private static async Task Patiently(Func<Task> work)
    {
        try
        {
            await work();
        }
        catch (StorageUnavailableException)
        {
            await work();
        }
    }
}
