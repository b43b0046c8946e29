using System.Buffers;
using System.Text.Json;
using RebuildApi.Contracts;
using RebuildApi.Server.Json;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Checks;

/// <summary>Verdicts as one JSON object on each line.</summary>
public sealed class JsonVerdicts : IVerdictForm
{
    private const int MostOfRow = 256;
    private const int MostOfText = 6;

    /// <inheritdoc/>
    public string MediaType => "application/x-ndjson";

    /// <inheritdoc/>
    public void Begin(IBufferWriter<byte> to)
    {
    }

    /// <inheritdoc/>
    public void Write(IBufferWriter<byte> to, long number, in CheckRow row, in RowVerdict verdict)
    {
        var line = new Utf8Line(to, MostOfRow + MostOfText * (row.Id.Length + row.At.Length + row.Unit.Length));
        Head(ref line, number, row);
        line.Raw("\",\"outcome\":\""u8);
        line.Raw(Word(verdict.Result.Outcome));
        line.Raw("\",\"probability\":"u8);
        line.Chance(verdict.Result.Probability);
        line.Raw(",\"margin\":"u8);
        line.Number(verdict.MarginInUnit);
        line.Raw(",\"unit\":\""u8);
        line.Json(row.Unit);
        line.Raw("\"}\n"u8);
        line.Done();
    }

    /// <inheritdoc/>
    public void Write(IBufferWriter<byte> to, long number, in CheckRow row, CheckFault fault)
    {
        var line = new Utf8Line(to, MostOfRow + MostOfText * (row.Id.Length + row.At.Length));
        Head(ref line, number, row);
        line.Raw("\",\"error\":"u8);
        line.Done();
        Fault(to, fault);
        to.Write("}\n"u8);
    }

    /// <inheritdoc/>
    public void End(IBufferWriter<byte> to, CheckCounts counts, CheckFault? fault)
    {
        using (var json = new Utf8JsonWriter(to))
        {
            json.WriteStartObject();
            json.WriteBoolean("end", true);
            json.WriteBoolean("complete", fault is null);
            json.WriteNumber("rows", counts.Rows);
            json.WriteNumber("conforming", counts.Conforming);
            json.WriteNumber("nonconforming", counts.Nonconforming);
            json.WriteNumber("inconclusive", counts.Inconclusive);
            json.WriteNumber("errors", counts.Faults);
            if (fault is not null)
            {
                json.WritePropertyName("error");
                Fault(json, fault);
            }

            json.WriteEndObject();
        }

        to.Write("\n"u8);
    }

    /// <summary>The word for an outcome.</summary>
    public static ReadOnlySpan<byte> Word(Outcome outcome) => outcome switch
    {
        Outcome.Conforming => "conforming"u8,
        Outcome.Nonconforming => "nonconforming"u8,
        Outcome.Inconclusive => "inconclusive"u8,
        _ => "not-assessed"u8,
    };

    private static void Head(ref Utf8Line line, long number, in CheckRow row)
    {
        line.Raw("{\"row\":"u8);
        line.Number(number);
        if (!row.Id.IsEmpty)
        {
            line.Raw(",\"id\":\""u8);
            line.Json(row.Id);
            line.Raw("\""u8);
        }

        line.Raw(",\"at\":\""u8);
        line.Json(row.At);
    }

    private static void Fault(IBufferWriter<byte> to, CheckFault fault)
    {
        using var json = new Utf8JsonWriter(to);
        Fault(json, fault);
    }

    private static void Fault(Utf8JsonWriter json, CheckFault fault) => JsonSerializer.Serialize(json, fault.Wire(), WireJson.Options);
}
