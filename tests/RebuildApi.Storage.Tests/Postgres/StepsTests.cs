using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Tests.Postgres;

public class StepsTests
{
    /// <summary>A portable file names the number of a step: it must mean the same in both engines.</summary>
    [Fact]
    public void Both_engines_come_by_the_same_steps() => Assert.Equal(
        Migration.Shipped(Migration.Sqlite).Select(s => (s.Number, s.Name)),
        Migration.Shipped(Migration.Postgres).Select(s => (s.Number, s.Name)));
}
