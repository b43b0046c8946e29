using System.Buffers;
using System.IO.Pipelines;
using System.Threading.Channels;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Checks;

/// <summary>
/// Lines in, answers out, in the same order, for as long as lines come. Lines are cut into blocks, blocks are judged on all cores and written in the
/// order in which they came. Only a few blocks are held at any time, so that memory stays the same whatever the length, and a slow reader of
/// the answers slows the reading of the lines.
/// </summary>
/// <param name="judge">What is done with each line.</param>
/// <param name="longest">The longest line, bytes.</param>
public sealed class LineRun(ILineJudge judge, int longest)
{
    private readonly Channel<Block> _free = Channel.CreateUnbounded<Block>();

    /// <summary>Judges every line to the end, and says how many came to what.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="answers">Where the answers go.</param>
    /// <param name="progress">Told how many lines are done, now and then; null when nobody asks.</param>
    /// <param name="cancellation">Gives up at once.</param>
    public async Task<CheckCounts> Run(LineBlocks lines, PipeWriter answers, IProgress<long>? progress, CancellationToken cancellation)
    {
        for (var i = 0; i < 2 * Environment.ProcessorCount; i++)
            _free.Writer.TryWrite(new Block(longest));
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var judging = Channel.CreateUnbounded<Task<Block>>();
        var reading = Read(lines, judging.Writer, stop.Token);
        try
        {
            var counts = await Write(judging.Reader, answers, progress, stop.Token);
            judge.End(answers, counts, await reading);
            await answers.FlushAsync(cancellation);
            return counts;
        }
        finally
        {
            await stop.CancelAsync();
            await ((Task)reading).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task<CheckFault?> Read(LineBlocks lines, ChannelWriter<Task<Block>> judging, CancellationToken cancellation)
    {
        try
        {
            while (true)
            {
                var block = await _free.Reader.ReadAsync(cancellation);
                if (!await lines.Next(block, cancellation))
                    return lines.Fault;
                await judging.WriteAsync(Task.Run(() => block.Judge(judge), cancellation), cancellation);
            }
        }
        catch (InvalidDataException broken)
        {
            return CheckFault.In("", Problems.BadRequest, default, "rows compressed as Content-Encoding says: " + broken.Message);
        }
        finally
        {
            judging.Complete();
        }
    }

    private async Task<CheckCounts> Write(ChannelReader<Task<Block>> judging, PipeWriter answers, IProgress<long>? progress, CancellationToken cancellation)
    {
        var counts = default(CheckCounts);
        await foreach (var task in judging.ReadAllAsync(cancellation))
        {
            var block = await task;
            answers.Write(block.Verdicts.WrittenSpan);
            counts += block.Counts;
            progress?.Report(counts.Rows);
            await _free.Writer.WriteAsync(block, cancellation);
            await answers.FlushAsync(cancellation);
        }

        return counts;
    }
}
