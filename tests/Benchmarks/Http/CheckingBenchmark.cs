using System.Diagnostics;
using System.IO.Pipelines;
using Brackenmere4;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Checks;
using RebuildApi.TestKit;

namespace RebuildApi.Benchmarks.Http;

/// <summary>A million rows checked over loopback and within the process, each beside a bare parser that writes as many bytes, turn about.</summary>
internal static class CheckingBenchmark
{
    private const int Rows = 1_000_000;
    private const int Long = 10_000_000;
    private const int Runs = 5;

    public static async Task Run(TextWriter output)
    {
        await OverLoopback(output);
        await WithinTheProcess(output);
    }

    private static async Task OverLoopback(TextWriter output)
    {
        using var folder = new Scratch();
        using var service = RunningProgram.Service(folder.Path);
        await service.First("/health/ready");
        using var bare = RunningProgram.Baseline("bare", typeof(CheckingBenchmark).Assembly.Location);
        await bare.First(Bare.Bytes);
        var each = (await Post(service, "/v1/checks", Rows)).Bytes / (double)Rows;
        var ceiling = FormattableString.Invariant($"{Bare.Rows}?each={each}");
        await Post(bare, ceiling, Rows);
        await output.WriteLineAsync(await Ratios.Of(
            "a million rows through checks over loopback, rows",
            Runs,
            0.7,
            async () => Rows / (await Post(service, "/v1/checks", Rows)).Seconds,
            async () => Rows / (await Post(bare, ceiling, Rows)).Seconds));
        var before = service.Memory;
        var most = before;
        var stream = Post(service, "/v1/checks", Long);
        while (!stream.IsCompleted)
        {
            most = Math.Max(most, service.Memory);
            await Task.WhenAny(stream, Task.Delay(100));
        }

        await stream;
        await output.WriteLineAsync(FormattableString.Invariant(
            $"memory while ten million rows pass: {before:F0} MiB before, {most:F0} MiB at most, growth {most - before:F0} MiB (goal 20)"));
    }

    // Sends and reads at once, as a script with a pipe does.
    private static async Task<(long Bytes, double Seconds)> Post(RunningProgram to, string path, long count)
    {
        var clock = Stopwatch.StartNew();
        await using var post = new WirePost();
        await post.Begin(new Uri(to.Http.BaseAddress!, path), "Content-Type: application/x-ndjson");
        var answer = post.ReadToEnd();
        for (var sent = 0L; sent < count; sent += SomeRows.Different)
            await post.Send(SomeRows.Thousand);
        await post.End();
        return ((await answer).Bytes, clock.Elapsed.TotalSeconds);
    }

    private static async Task WithinTheProcess(TextWriter output)
    {
        var families = new BrackenmerePlugin().Declare().Select(f => new FamilyIndex(f));
        var judge = new RowJudge(new CheckBook(families, [], Policy.Default.Of), null);
        var each = await Written(Check) / (double)Rows;
        await output.WriteLineAsync(await Ratios.Of("the same within the process, rows", Runs, 0.7, () => Rate(Check), () => Rate(Parse)));

        Task Check(PipeReader rows, PipeWriter answers) => new CheckRun(judge, new JsonVerdicts()).Run(rows, table: false, answers, null, default);
        Task Parse(PipeReader rows, PipeWriter answers) => Bare.Answer(rows, answers, each);
    }

    private static async Task<double> Rate(Func<PipeReader, PipeWriter, Task> run)
    {
        var clock = Stopwatch.StartNew();
        await Written(run);
        return Rows / clock.Elapsed.TotalSeconds;
    }

    private static async Task<long> Written(Func<PipeReader, PipeWriter, Task> run)
    {
        using var nowhere = new Nowhere();
        var answers = PipeWriter.Create(nowhere);
        await run(PipeReader.Create(SomeRows.Open(Rows / 1000), new StreamPipeReaderOptions(bufferSize: 1 << 16)), answers);
        await answers.CompleteAsync();
        return nowhere.Bytes;
    }
}
