using System.Diagnostics;
using System.Text;
using RebuildApi.Server.Wire;

namespace RebuildApi.Benchmarks.Http;

/// <summary>The verdicts on an unchanged unit beside a bare endpoint with the same bytes; the start, and the memory after it, beside an empty service.</summary>
internal static class AnsweringBenchmark
{
    private const int Runs = 5;
    private const int Asked = 300;
    private const int Clients = 8;
    private const string Verdicts = "/v1/units/u1/verdicts?limit=500";

    public static async Task Run(TextWriter output)
    {
        await Unchanged(output);
        await Starting(output);
    }

    private static async Task Unchanged(TextWriter output)
    {
        using var folder = new Scratch();
        using var service = RunningProgram.Service(folder.Path);
        await service.First("/health/ready");
        await TakeIn(service);
        var file = Path.Combine(folder.Path, "verdicts.json");
        await File.WriteAllBytesAsync(file, await service.First(Verdicts));
        using var bare = RunningProgram.Baseline("bare", file);
        await bare.First(Bare.Bytes);
        await Rate(service, Verdicts);
        await Rate(bare, Bare.Bytes);
        await output.WriteLineAsync(await Ratios.Of(
            FormattableString.Invariant($"verdicts of an unchanged unit ({new FileInfo(file).Length / 1000} kB), answers"),
            Runs,
            0.7,
            () => Rate(service, Verdicts),
            () => Rate(bare, Bare.Bytes)));
    }

    private static async Task<double> Rate(RunningProgram of, string path)
    {
        var clock = Stopwatch.StartNew();
        await Task.WhenAll(Enumerable.Range(0, Clients).Select(async _ =>
        {
            for (var i = 0; i < Asked; i++)
                await of.Http.GetByteArrayAsync(new Uri(path, UriKind.Relative));
        }));
        return Clients * Asked / clock.Elapsed.TotalSeconds;
    }

    private static async Task Starting(TextWriter output)
    {
        var (ours, empty, memory, least) = (new List<double>(), new List<double>(), new List<double>(), new List<double>());
        using var folder = new Scratch();
        using (var first = RunningProgram.Service(folder.Path))
        {
            await first.First("/health/ready");
            await TakeIn(first);
        }

        for (var run = 0; run < Runs; run++)
        {
            var (e, m) = await Started(() => RunningProgram.Baseline("empty"), Bare.Bytes);
            var (o, n) = await Started(() => RunningProgram.Service(folder.Path), Verdicts);
            (empty, least, ours, memory) = ([.. empty, e], [.. least, m], [.. ours, o], [.. memory, n]);
        }

        await output.WriteLineAsync(FormattableString.Invariant(
            $"start to first verdict: {Ratios.Median(ours):F2} s, empty service with a reference page {Ratios.Median(empty):F2} s, {Ratios.Median(ours.Zip(empty, (a, b) => a / b)):F1} times (goal 1.4)"));
        await output.WriteLineAsync(FormattableString.Invariant(
            $"memory then: {Ratios.Median(memory):F0} MiB, empty service {Ratios.Median(least):F0} MiB, {Ratios.Median(memory.Zip(least, (a, b) => a / b)):F1} times (goal 1.6)"));
    }

    private static async Task<(double Seconds, double Memory)> Started(Func<RunningProgram> start, string path)
    {
        var clock = Stopwatch.StartNew();
        using var program = start();
        await program.First(path);
        return (clock.Elapsed.TotalSeconds, program.Memory);
    }

    private static async Task TakeIn(RunningProgram service)
    {
        using var unit = new StringContent("""{ "id": "u1", "tag": "T-1", "family": "brackenmere-4", "person": "Ada" }""", Encoding.UTF8, "application/json");
        using var made = await service.Http.PostAsync(new Uri("/v1/units", UriKind.Relative), unit);
        made.EnsureSuccessStatusCode();
    }
}
