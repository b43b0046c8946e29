using System.Data.Common;
using CsCheck;
using Microsoft.Data.Sqlite;
using Npgsql;
using RebuildApi.Storage.Postgres;
using RebuildApi.Storage.Sql;
using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Storage.Tests;

public class GroupCommitTests
{
    private enum Fate
    {
        Succeeds,
        RefusesAtOnce,
        RefusesAfterWriting,
        AnswerCantBeKept,
        RunsDry,
        CallerIsGone,
    }

    [Fact]
    public async Task A_change_that_throws_undoes_itself_and_nothing_of_its_neighbours()
    {
        await using var temp = new TempStore();
        using var bench = new Bench(temp);
        var round = 0;

        Gen.Int[0, 5].Select(i => (Fate)i).Array[1, 20].Sample(
            fates =>
            {
                round++;
                var before = bench.Chain();
                var group = fates.Select((fate, i) => bench.Change(fate, $"{round}-{i}")).ToArray();

                bench.Commit.Run(group);

                var expected = fates.Count(f => f == Fate.Succeeds);
                var chain = bench.Chain();
                return chain.Intact
                    && chain.Entries == before.Entries + expected
                    && fates.Select((fate, i) => (fate, i)).All(x => (x.fate == Fate.Succeeds) == bench.Holds($"{round}-{x.i}"))
                    && fates.Zip(group).All(x => Answered(x.First, x.Second));
            },
            iter: 200,
            threads: 1);
    }

    [Fact]
    public async Task Nobody_hears_an_answer_before_the_whole_group_is_on_the_disk()
    {
        await using var temp = new TempStore();
        using var bench = new Bench(temp);
        var first = bench.Change(Fate.Succeeds, "first");
        var heardEarly = true;
        var visibleEarly = true;
        var second = new PendingChange(Requests.Plain, session =>
        {
            heardEarly = first.Answer.IsCompleted;
            visibleEarly = bench.Holds("first");
            session.Open(Some.Unit("second"));
            return Requests.Ok("second");
        });

        bench.Commit.Run([first, second]);

        Assert.False(heardEarly);
        Assert.False(visibleEarly);
        Assert.True(first.Answer.IsCompletedSuccessfully);
        Assert.True(bench.Holds("first") && bench.Holds("second"));
    }

    private static bool Answered(Fate fate, PendingChange change) => fate switch
    {
        Fate.Succeeds or Fate.RunsDry => change.Answer.IsCompletedSuccessfully,
        Fate.CallerIsGone => change.Answer.IsCanceled,
        Fate.AnswerCantBeKept => change.Answer.Exception?.InnerException is DbException,
        _ => change.Answer.Exception?.InnerException is DuplicateIdException or UnknownIdException,
    };

    /// <summary>The parts of a store, so that a test says what goes into one group.</summary>
    private sealed class Bench : IDisposable
    {
        private readonly DbConnection _connection;
        private readonly Func<DbConnection> _reader;
        private readonly Action _close;

        public Bench(TempStore temp)
        {
            // Made by a store, so that everything is there.
            temp.Store.Events(0, 1, default).AsTask().GetAwaiter().GetResult();
            temp.Close().GetAwaiter().GetResult();
            (_connection, _reader, _close) = temp.Options.Database is null ? InFile(temp.Options) : OnServer(temp.Options);
            IWriteTransaction transaction = _connection is SqliteConnection file
                ? new SqliteWriteTransaction(file)
                : new PostgresWriteTransaction((NpgsqlConnection)_connection, new ShopLock("s", "main"));
            Commit = new GroupCommit(transaction, temp.Options);
        }

        public GroupCommit Commit { get; }

        public PendingChange Change(Fate fate, string id)
        {
            var change = new PendingChange(Requests.Keyed(id) with { DryRun = fate == Fate.RunsDry }, session => Work(session, fate, id));
            if (fate == Fate.CallerIsGone)
                change.GiveUp(new CancellationToken(canceled: true));
            return change;
        }

        public bool Holds(string unit)
        {
            using var reader = _reader();
            return new UnitQueries(reader, "main").Unit(unit) is not null;
        }

        public ChainReport Chain()
        {
            using var reader = _reader();
            return new ChainWalk(reader, "main").Verify(ChainQuestion.Plain, default);
        }

        public void Dispose()
        {
            _connection.Dispose();
            _close();
        }

        private static (DbConnection, Func<DbConnection>, Action) InFile(StoreOptions options)
        {
            var file = new SqliteFile(options);
            var writer = file.OpenWriter();
            file.PrepareToWrite(writer);
            return (writer, file.OpenReader, file.Close);
        }

        private static (DbConnection, Func<DbConnection>, Action) OnServer(StoreOptions options)
        {
            var source = PostgresAddress.Source(options);
            return (source.OpenConnection(), source.OpenConnection, source.Dispose);
        }

        private static StoredAnswer Work(IWriteSession session, Fate fate, string id)
        {
            if (fate == Fate.RefusesAtOnce)
                throw new UnknownIdException("unit", id);
            session.Open(Some.Unit(id));
            if (fate == Fate.RefusesAfterWriting)
                throw new DuplicateIdException("unit", id);
            return fate == Fate.AnswerCantBeKept ? Requests.Ok(id) with { ContentType = null! } : Requests.Ok(id);
        }
    }
}
