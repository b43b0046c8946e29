using System.Buffers;
using System.Globalization;
using System.IO.Pipelines;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace RebuildApi.Benchmarks.Http;

/// <summary>
/// The ceilings: a web server that does nothing but what every server must. <c>bare</c> parses the same rows, or gives the same bytes; <c>empty</c> is
/// one endpoint with the same reference page and nothing behind it.
/// </summary>
internal static class Bare
{
    public const string Rows = "/rows";
    public const string Bytes = "/bytes";

    /// <summary>Parses rows and answers each with a set number of bytes; gives back the bytes of a file.</summary>
    public static void RunBare(string file, string address)
    {
        var body = File.ReadAllBytes(file);
        var app = Build(address, _ => { });
        app.MapGet(Bytes, http =>
        {
            http.Response.ContentType = "application/json; charset=utf-8";
            http.Response.ContentLength = body.Length;
            return http.Response.Body.WriteAsync(body).AsTask();
        });
        app.MapPost(Rows, async http =>
        {
            http.Response.ContentType = "application/x-ndjson";
            var each = double.Parse(http.Request.Query["each"].ToString(), CultureInfo.InvariantCulture);
            await Answer(http.Request.BodyReader, http.Response.BodyWriter, each);
        });
        app.Run();
    }

    /// <summary>One endpoint and the reference page.</summary>
    public static void RunEmpty(string address)
    {
        var app = Build(address, services => services.AddEndpointsApiExplorer().AddSwaggerGen());
        app.UseSwagger();
        app.UseSwaggerUI();
        app.MapGet(Bytes, () => "ok");
        app.Run();
    }

    /// <summary>Reads every token of every row, and writes as many bytes for each as the real answer has on average.</summary>
    /// <returns>How many rows there were.</returns>
    public static async Task<long> Answer(PipeReader rows, PipeWriter answers, double bytesEach)
    {
        var (count, owed) = (0L, 0.0);
        while (true)
        {
            var read = await rows.ReadAsync();
            var buffer = read.Buffer;
            while (TakeLine(ref buffer, read.IsCompleted, out var line))
            {
                Parse(line);
                count++;
                owed += bytesEach;
                owed -= Fill(answers, (int)owed);
            }

            rows.AdvanceTo(buffer.Start, buffer.End);
            await answers.FlushAsync();
            if (read.IsCompleted)
                return count;
        }
    }

    private static int Fill(PipeWriter answers, int size)
    {
        answers.GetSpan(size)[..size].Fill((byte)' ');
        answers.Advance(size);
        return size;
    }

    private static bool TakeLine(ref ReadOnlySequence<byte> buffer, bool isLast, out ReadOnlySequence<byte> line)
    {
        line = buffer;
        if (buffer.PositionOf((byte)'\n') is { } end)
        {
            line = buffer.Slice(0, end);
            buffer = buffer.Slice(buffer.GetPosition(1, end));
            return true;
        }

        if (!isLast || buffer.IsEmpty)
            return false;
        buffer = buffer.Slice(buffer.End);
        return true;
    }

    private static void Parse(in ReadOnlySequence<byte> line)
    {
        var reader = new Utf8JsonReader(line);
        while (reader.Read())
        {
        }
    }

    private static WebApplication Build(string address, Action<IServiceCollection> more)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls(address).ConfigureKestrel(kestrel => kestrel.Limits.MaxRequestBodySize = null);
        more(builder.Services);
        return builder.Build();
    }
}
