using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Storage;

// Sixteen benches write readings without end and say each one that was acknowledged, until somebody kills the process.
// Arguments: the database, a file or a connection, and a word that makes this round's ids its own.
const int Writers = 16;
var (path, round) = (args[0], args[1]);
var said = new Lock();
await using var store = Stores.Open(new StoreOptions(path, TimeProvider.System) { Database = path.Contains("Host=", StringComparison.Ordinal) ? path : null });
await store.Write(Request(round + "-open"), Open, CancellationToken.None);
await Task.WhenAll(Enumerable.Range(1, Writers).Select(writer => Task.Run(() => WriteOn(writer))));

async Task WriteOn(int writer)
{
    for (var number = 1; ; number++)
    {
        var id = string.Create(CultureInfo.InvariantCulture, $"{round}-{writer}-{number}");
        await store.Write(Request(id), session => Add(session, id), CancellationToken.None);
        lock (said)
            Console.Out.Write(id + "\n");
    }
}

static WriteRequest Request(string key) => new("bench", "POST /v1/units/u1/measurements", key, key, DryRun: false);

StoredAnswer Open(IWriteSession session)
{
    session.Open(new Unit(round, round, new FamilyVersion("brackenmere-4", "1.0.0"), null, [], null, "teardown", DateTimeOffset.UnixEpoch, "Ada", 0));
    session.Add(round, new Component(round, 1, "gear", Origin.Unit, ImmutableSortedDictionary<string, string>.Empty, null));
    return Answer();
}

StoredAnswer Add(IWriteSession session, string id)
{
    var taken = new Taken(null, null, "Ada", "bench-1", DateTimeOffset.UnixEpoch, null);
    session.Add(round, new Measurement(id, round, 1, "width", [Reading.Of(Length.Millimetres(30.012m), "30.012", "mm")], taken, null));
    return Answer();
}

static StoredAnswer Answer() => new(201, "", ReadOnlyMemory<byte>.Empty, ImmutableSortedDictionary<string, string>.Empty);
