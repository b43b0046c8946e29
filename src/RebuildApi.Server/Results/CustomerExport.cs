using System.Collections.Immutable;
using System.IO.Pipelines;
using System.Text.Json;
using RebuildApi.Server.Json;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Results;

/// <summary>Everything of one customer as one JSON object, written as it is read: nothing larger than one entry, or one judgement, is held.</summary>
/// <param name="store">The records.</param>
/// <param name="customer">The customer.</param>
/// <param name="units">The units.</param>
/// <param name="now">When it is read.</param>
public sealed class CustomerExport(IStore store, string customer, ImmutableArray<string> units, DateTimeOffset now) : IResult
{
    private const int AtOnce = 200;

    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var stop = httpContext.RequestAborted;
        var head = await store.Head(stop);
        httpContext.Response.ContentType = "application/json; charset=utf-8";
        httpContext.Response.Headers.ContentDisposition = "attachment; filename=\"customer.json\"";
        var body = httpContext.Response.BodyWriter;
        await using var json = new Utf8JsonWriter(body, new JsonWriterOptions { Encoder = WireJson.Options.Encoder });
        json.WriteStartObject();
        json.WriteString("customer", customer);
        json.WriteString("asOf", now);
        json.WriteNumber("entries", head.Sequence);
        json.WriteString("head", head.Hash);
        json.WriteStartArray("units");
        foreach (var unit in units)
            await WriteUnit(json, body, unit, stop);
        json.WriteEndArray();
        json.WriteBoolean("end", true);
        json.WriteEndObject();
        await json.FlushAsync(stop);
        await body.FlushAsync(stop);
    }

    private async Task WriteUnit(Utf8JsonWriter json, PipeWriter body, string unit, CancellationToken stop)
    {
        json.WriteStartObject();
        json.WritePropertyName("unit");
        JsonSerializer.Serialize(json, UnitWire.From((await store.Unit(unit, stop))!), WireJson.Options);
        json.WriteStartArray("entries");
        await foreach (var entry in Entries(unit, stop))
            await Write(json, body, CustomerEntryWire.From(entry), stop);
        json.WriteEndArray();
        json.WriteStartArray("judgements");
        await foreach (var kept in Judgements(unit, stop))
            await Write(json, body, CustomerJudgementWire.From(kept), stop);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static async Task Write<T>(Utf8JsonWriter json, PipeWriter body, T value, CancellationToken stop)
    {
        JsonSerializer.Serialize(json, value, WireJson.Options);
        await json.FlushAsync(stop);
        await body.FlushAsync(stop);
    }

    private async IAsyncEnumerable<HistoryEntry> Entries(string unit, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken stop)
    {
        for (var after = 0L; ;)
        {
            var entries = await store.History(unit, after, AtOnce, stop);
            foreach (var entry in entries)
                yield return entry;
            if (entries.Length < AtOnce)
                yield break;
            after = entries[^1].Event.Sequence;
        }
    }

    private async IAsyncEnumerable<Judgement> Judgements(string unit, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken stop)
    {
        string? after = null;
        do
        {
            var page = await store.Judgements(unit, after, AtOnce, stop);
            foreach (var kept in page.Items)
                yield return (await store.Judgement(kept.Id, stop))!;
            after = page.Next;
        }
        while (after is not null);
    }
}
