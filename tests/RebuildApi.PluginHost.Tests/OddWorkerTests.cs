using System.Globalization;

namespace RebuildApi.PluginHost.Tests;

/// <summary>The host's end of the protocol, against a worker that writes odd things: it is given up with words, in time, and leaves no process.</summary>
public sealed class OddWorkerTests : IDisposable
{
    private readonly PluginBench _bench = new();

    /// <summary>The odd things are the business of <c>tests/TestPlugins/a-service</c>; each is made from its number and always the same.</summary>
    [Theory]
    [InlineData("noise", 12)]
    [InlineData("huge-length", 1)]
    [InlineData("negative-length", 1)]
    [InlineData("cut-off", 1)]
    [InlineData("cut-off-and-waits", 1)]
    [InlineData("part-too-long", 1)]
    [InlineData("another-word", 1)]
    [InlineData("declares-noise", 2)]
    [InlineData("answers-twice", 1)]
    [InlineData("says-nothing", 1)]
    public async Task An_odd_worker_is_given_up_with_words(string oddity, int rounds)
    {
        var mark = _bench.Worker.Arguments[^1];
        _bench.Shipped("good-with-hook");
        foreach (var round in Enumerable.Range(1, rounds))
        {
            var catalog = _bench.Open(o => o with
            {
                Worker = new WorkerCommand("dotnet", [Shelf.PathOf("a-service"), "odd-worker", oddity, round.ToString(CultureInfo.InvariantCulture), mark]),
                DeclareBudget = TimeSpan.FromSeconds(oddity is "cut-off-and-waits" or "says-nothing" ? 2 : 60),
            });

            var status = catalog.Of("good-with-hook");
            Assert.Equal(PluginState.Failed, status.State);
            Assert.NotEmpty(status.Reason);
            Assert.DoesNotContain('\n', status.Reason);
        }

        Assert.True(await Processes.AllGone(mark));
    }

    public void Dispose() => _bench.Dispose();
}
