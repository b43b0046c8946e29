using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Storage;
using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Benchmarks;

/// <summary>
/// Durable readings a second with 64 writers, beside the bare grouped commit of the same rows into the same tables in the same run. The
/// share tells what checking, chaining and serialising cost; the figures themselves are this disk's.
/// </summary>
internal static class StorageBenchmark
{
    private const int Writers = 64;
    private const int Each = 500;
    private const int Runs = 5;

    public static async Task Run(TextWriter output)
    {
        var shares = new List<double>();
        for (var run = 1; run <= Runs; run++)
        {
            var bare = await Measured(BareGroupCommit.Open);
            var store = await Measured(StoreUnderTest.Open);
            shares.Add(store / bare);
            await output.WriteLineAsync(string.Create(
                CultureInfo.InvariantCulture, $"run {run}: bare {bare:F0} readings/s, store {store:F0} readings/s, share {store / bare:F2}"));
        }

        shares.Sort();
        await output.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"median share {shares[Runs / 2]:F2} (goal 0.80)"));
    }

    private static async Task<double> Measured(Func<string, Task<IReadingSink>> open)
    {
        var folder = Directory.CreateTempSubdirectory("storage-benchmark-");
        double rate;
        await using (var sink = await open(Path.Combine(folder.FullName, "shop.db")))
        {
            var clock = Stopwatch.StartNew();
            await Task.WhenAll(Enumerable.Range(0, Writers).Select(writer => Task.Run(async () =>
            {
                for (var i = 0; i < Each; i++)
                    await sink.Add(string.Create(CultureInfo.InvariantCulture, $"m{writer}-{i}"));
            })));
            rate = Writers * Each / clock.Elapsed.TotalSeconds;
        }

        folder.Delete(recursive: true);
        return rate;
    }
}

/// <summary>Takes readings, and answers when each is on the disk.</summary>
internal interface IReadingSink : IAsyncDisposable
{
    Task Add(string id);
}

/// <summary>The store as the service uses it.</summary>
internal sealed class StoreUnderTest(SqliteStore store) : IReadingSink
{
    private static readonly StoredAnswer Answer = new(201, "", new byte[100], ImmutableSortedDictionary<string, string>.Empty);
    private static readonly Taken Taken = new("mic-1", null, "Ada", "bench-1", DateTimeOffset.UnixEpoch, null);

    public static async Task<IReadingSink> Open(string path)
    {
        var store = SqliteStore.Open(new StoreOptions(path, TimeProvider.System));
        await store.Write(Request("open"), Prepare, CancellationToken.None);
        return new StoreUnderTest(store);
    }

    public Task Add(string id) => store.Write(Request(id), session => Add(session, id), CancellationToken.None);

    public ValueTask DisposeAsync() => store.DisposeAsync();

    private static StoredAnswer Prepare(IWriteSession session)
    {
        session.Open(new Unit("u1", "tag", new FamilyVersion("brackenmere-4", "1.0.0"), null, [], null, "teardown", DateTimeOffset.UnixEpoch, "Ada", 0));
        session.Add("u1", new Component("c1", 1, "gear", Origin.Unit, ImmutableSortedDictionary<string, string>.Empty, null));
        return Answer;
    }

    private static StoredAnswer Add(IWriteSession session, string id)
    {
        session.Add("u1", new Measurement(id, "c1", 1, "width", [Reading.Of(Length.Millimetres(30.012m), "30.012", "mm")], Taken, null));
        return Answer;
    }

    private static WriteRequest Request(string key) => new("bench-1", "POST /v1/units/u1/measurements", key, key, DryRun: false);
}
