using System.Buffers;
using System.Text;

namespace RebuildApi.Server.Checks;

/// <summary>Verdicts as a table that a spreadsheet opens.</summary>
public sealed class CsvVerdicts : IVerdictForm
{
    private const int MostOfRow = 256;
    private const int MostOfText = 4;

    /// <inheritdoc/>
    public string MediaType => "text/csv; charset=utf-8; header=present";

    /// <inheritdoc/>
    public void Begin(IBufferWriter<byte> to) => to.Write("row,id,at,outcome,probability,margin,unit,error,field,got,allowed\r\n"u8);

    /// <inheritdoc/>
    public void Write(IBufferWriter<byte> to, long number, in CheckRow row, in RowVerdict verdict)
    {
        var line = new Utf8Line(to, MostOfRow + MostOfText * (row.Id.Length + row.At.Length + row.Unit.Length));
        Head(ref line, number, row);
        line.Raw(JsonVerdicts.Word(verdict.Result.Outcome));
        line.Raw(","u8);
        line.Chance(verdict.Result.Probability);
        line.Raw(","u8);
        line.Number(verdict.MarginInUnit);
        line.Raw(","u8);
        line.Cell(row.Unit);
        line.Raw(",,,,\r\n"u8);
        line.Done();
    }

    /// <inheritdoc/>
    public void Write(IBufferWriter<byte> to, long number, in CheckRow row, CheckFault fault)
    {
        var line = new Utf8Line(to, MostOfRow + MostOfText * (row.Id.Length + row.At.Length + Length(fault)));
        Head(ref line, number, row);
        line.Raw(",,,"u8);
        Tail(ref line, fault);
        line.Done();
    }

    /// <inheritdoc/>
    public void End(IBufferWriter<byte> to, CheckCounts counts, CheckFault? fault)
    {
        var line = new Utf8Line(to, MostOfRow + (fault is null ? 0 : MostOfText * Length(fault)));
        line.Raw("#end,"u8);
        line.Number(counts.Rows);
        line.Raw(fault is null ? ",complete,"u8 : ",incomplete,"u8);
        line.Raw("conforming="u8);
        line.Number(counts.Conforming);
        line.Raw(" nonconforming="u8);
        line.Number(counts.Nonconforming);
        line.Raw(" inconclusive="u8);
        line.Number(counts.Inconclusive);
        line.Raw(" errors="u8);
        line.Number(counts.Faults);
        line.Raw(",,,"u8);
        if (fault is null)
            line.Raw(",,,,\r\n"u8);
        else
            Tail(ref line, fault);
        line.Done();
    }

    private static void Head(ref Utf8Line line, long number, in CheckRow row)
    {
        line.Number(number);
        line.Raw(","u8);
        line.Cell(row.Id);
        line.Raw(","u8);
        line.Cell(row.At);
        line.Raw(","u8);
    }

    private static void Tail(ref Utf8Line line, CheckFault fault)
    {
        foreach (var cell in new[] { fault.Problem.Code, fault.Field, fault.Got, fault.Allowed })
        {
            line.Raw(","u8);
            line.Cell(Encoding.UTF8.GetBytes(cell));
        }

        line.Raw("\r\n"u8);
    }

    private static int Length(CheckFault fault) => fault.Problem.Code.Length + fault.Field.Length + fault.Got.Length + fault.Allowed.Length;
}
