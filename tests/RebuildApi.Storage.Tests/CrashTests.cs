using System.Diagnostics;
using System.Globalization;
using Xunit.Abstractions;

namespace RebuildApi.Storage.Tests;

public class CrashTests(ITestOutputHelper output)
{
    /// <summary>A few rounds each time; as many as one likes with CRASH_ROUNDS.</summary>
    private static int Rounds => int.Parse(Environment.GetEnvironmentVariable("CRASH_ROUNDS") ?? "5", CultureInfo.InvariantCulture);

    [Fact]
    public async Task Every_acknowledged_reading_survives_the_death_of_the_process()
    {
        await using var temp = new TempStore();
        var moments = new Random(20260302);
        var (total, noted) = (0, (string?)null);
        for (var round = 1; round <= Rounds; round++)
        {
            var id = FormattableString.Invariant($"r{round}");
            var acknowledged = await Killed(temp.Options.Database ?? temp.Options.Path, id, moments.Next(300));
            total += acknowledged.Count;

            var chain = await temp.Store.VerifyChain(new ChainQuestion(noted), default);
            var file = await temp.Store.File(id, default);
            var again = await temp.Write(Repeat(acknowledged[^1]), _ => { });

            Assert.True(chain.Intact, chain.Why);
            Assert.True(noted is null || chain.Noted is not null, "the head noted before the round is no longer in the chain");
            noted = chain.Head;
            Assert.Empty(acknowledged.Except(file!.Measurements.Select(m => m.Id)));
            Assert.True(again.Replayed);
            await temp.Close();
        }

        output.WriteLine($"{Rounds} kills, {total} acknowledged readings, none lost; the chain intact each time, and every noted head still in it");
    }

    private static WriteRequest Repeat(string id) => new("bench", "POST /v1/units/u1/measurements", id, id, DryRun: false);

    /// <summary>Lets a process write until some while after its first acknowledgement, kills it, and gives what it had acknowledged.</summary>
    private static async Task<List<string>> Killed(string database, string round, int milliseconds)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "RebuildApi.Storage.CrashWriter.dll");
        using var process = Process.Start(new ProcessStartInfo("dotnet", [program, database, round])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var first = await process.StandardOutput.ReadLineAsync();
        Assert.True(first is not null, await Words(process, first));
        var rest = process.StandardOutput.ReadToEndAsync();
        await Task.Delay(milliseconds);
        process.Kill();
        await process.WaitForExitAsync();

        // The last line may have been cut by the kill; what was said before it was said whole.
        return [first!, .. (await rest).Split('\n')[..^1]];
    }

    private static async Task<string> Words(Process process, string? first) => first ?? await process.StandardError.ReadToEndAsync();
}
