using System.Text.Json;
using RebuildApi.Server.Json;

namespace RebuildApi.Server.Results;

/// <summary>One JSON object on each line.</summary>
public sealed class NdjsonRows<T>(Stream stream) : IRowWriter<T>
{
    /// <inheritdoc/>
    public Task Begin(CancellationToken cancellation) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task Write(T item, CancellationToken cancellation) => Line(item, cancellation);

    /// <inheritdoc/>
    public Task End(int count, CancellationToken cancellation) => Line(new { End = true, Rows = count }, cancellation);

    private async Task Line<TLine>(TLine line, CancellationToken cancellation)
    {
        await JsonSerializer.SerializeAsync(stream, line, WireJson.Options, cancellation);
        await stream.WriteAsync("\n"u8.ToArray(), cancellation);
    }
}
