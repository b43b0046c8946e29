using System.Globalization;
using System.Text;
using RebuildApi.Contracts;
using RebuildApi.Engine.Checking;
using RebuildApi.Engine.Quantities;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Checks;

/// <summary>One row → one verdict, without allocation unless something is wrong with it.</summary>
public sealed class RowJudge(CheckBook book, string? usualFamily)
{
    private const int LongestWord = 200;

    /// <summary>Judges a row.</summary>
    /// <param name="row">The row.</param>
    /// <param name="verdict">The verdict, when there is no fault.</param>
    /// <returns>What is wrong with the row, or null.</returns>
    public CheckFault? Judge(in CheckRow row, out RowVerdict verdict)
    {
        verdict = default;
        if (FindRule(row, out var rule) is { } noRule)
            return noRule;
        if (FindUnit(row, rule!, out var unit) is { } noUnit)
            return noUnit;
        if (Read(row.Value, "value", rule!, unit!, out var value) is { } noValue)
            return noValue;
        if (Uncertainty(row, rule!, unit!, value, out var uncertainty) is { } noUncertainty)
            return noUncertainty;
        verdict = new RowVerdict(rule!, unit!, rule!.Judge(value.Point, uncertainty));
        return null;
    }

    private CheckFault? FindRule(in CheckRow row, out CheckRule? rule)
    {
        rule = null;
        Span<char> chars = stackalloc char[LongestWord];
        if (row.Family.IsEmpty && usualFamily is null)
            return CheckFault.In("family", FieldProblems.MissingField, default, "the id of a family, in each row or as ?family=");
        var table = row.Family.IsEmpty ? book.Family(usualFamily) : book.Family(Chars(row.Family, chars));
        if (table is null)
            return CheckFault.Unknown("family", FieldProblems.NotAllowed, row.Family, book.Families);
        if (row.At.IsEmpty)
            return CheckFault.In("at", FieldProblems.MissingField, default, "position/characteristic, or the id of a clearance");
        rule = table.Find(Chars(row.At, chars));
        return rule is null ? CheckFault.Unknown("at", FieldProblems.UnknownSubject, row.At, table.Subjects) : null;
    }

    private static CheckFault? FindUnit(in CheckRow row, CheckRule rule, out UnitOfMeasure? unit)
    {
        unit = null;
        if (row.Unit.IsEmpty)
            return CheckFault.In("unit", FieldProblems.BareNumber, row.Value, Symbols(rule.Dimension));
        Span<char> chars = stackalloc char[LongestWord];
        unit = UnitTable.Of(rule.Dimension).Find(Chars(row.Unit, chars));
        if (unit is not null)
            return null;
        var problem = UnitCatalogue.Find(Encoding.UTF8.GetString(row.Unit)) is null ? FieldProblems.UnknownUnitOfMeasure : FieldProblems.WrongDimension;
        return CheckFault.In("unit", problem, row.Unit, Symbols(rule.Dimension));
    }

    private static CheckFault? Read(ReadOnlySpan<byte> text, string field, CheckRule rule, UnitOfMeasure unit, out RowValue value)
    {
        value = default;
        if (text.IsEmpty)
            return CheckFault.In(field, FieldProblems.MissingField, default, "a decimal number such as 0.015");
        return ShortDecimal.TryRead(text, out var number) ? Exactly(number, text, field, unit, out value) : Slowly(text, field, rule, unit, out value);
    }

    private static CheckFault? Exactly(ShortDecimal number, ReadOnlySpan<byte> text, string field, UnitOfMeasure unit, out RowValue value)
    {
        value = default;
        if (unit is RealUnit real)
        {
            var si = real.ToSi(number.ToDouble());
            value = new RowValue(si, Math.Abs(real.ToSi(number.LastDigit) - real.ToSi(0)));
            return Math.Abs(si) > QuantityText.LargestSi ? CheckFault.In(field, FieldProblems.OutOfRange, text, "a smaller number") : null;
        }

        var factor = ((LengthUnit)unit).Nanometres;
        if (!number.TryTimes(factor, out var nanometres))
            return CheckFault.In(field, FieldProblems.TooManyDigits, text, "a whole number of nanometres: at most 6 decimals of a millimetre, 5 of an inch");
        value = new RowValue(nanometres, number.LastDigit * factor);
        return Math.Abs(nanometres) > QuantityText.Longest.Nanometres ? CheckFault.In(field, FieldProblems.OutOfRange, text, "a length of at most 1 km") : null;
    }

    /// <summary>Numbers with an exponent or very many digits, through the same reader as everywhere.</summary>
    private static CheckFault? Slowly(ReadOnlySpan<byte> text, string field, CheckRule rule, UnitOfMeasure unit, out RowValue value)
    {
        value = default;
        var sent = Encoding.UTF8.GetString(text);
        var read = QuantityText.Read(sent, unit.Symbol, rule.Dimension);
        if (read.Problem is { } problem)
            return CheckFault.In(field, FieldProblems.All.FirstOrDefault(p => p.Code == problem.Code) ?? FieldProblems.WrongType, text, problem.Allowed);
        var decimals = decimal.TryParse(sent, NumberStyles.Float, CultureInfo.InvariantCulture, out var exact) ? exact.Scale : 0;
        var point = read.Quantity is Exact length ? length.Value.Nanometres : read.Quantity!.InSi;
        var factor = unit is LengthUnit l ? l.Nanometres : Math.Abs(((RealUnit)unit).ToSi(1) - ((RealUnit)unit).ToSi(0));
        value = new RowValue(point, Math.Pow(10, -decimals) * factor);
        return null;
    }

    /// <summary>What is stated stands before the instrument's, and that before the last digit; an instrument that is named must be known all the same.</summary>
    private CheckFault? Uncertainty(in CheckRow row, CheckRule rule, UnitOfMeasure unit, RowValue value, out double uncertainty)
    {
        uncertainty = InstrumentUncertainty.OfLastDigit(value.LastDigit, rule.Dimension);
        if (!row.Instrument.IsEmpty && OfInstrument(row.Instrument, rule, ref uncertainty) is { } fault)
            return fault;
        return row.Uncertainty.IsEmpty ? null : Stated(row.Uncertainty, unit, out uncertainty);
    }

    private CheckFault? OfInstrument(ReadOnlySpan<byte> id, CheckRule rule, ref double uncertainty)
    {
        Span<char> chars = stackalloc char[LongestWord];
        if (!book.Knows(Chars(id, chars), rule.Dimension, out uncertainty))
            return CheckFault.Unknown("instrument", FieldProblems.UnknownInstrument, id, book.Instruments);
        return double.IsNaN(uncertainty)
            ? CheckFault.In("instrument", FieldProblems.WrongDimension, id, "an instrument that measures what the row is about")
            : null;
    }

    private static CheckFault? Stated(ReadOnlySpan<byte> text, UnitOfMeasure unit, out double uncertainty)
    {
        uncertainty = 0;
        if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var stated) || !(stated is >= 0 and <= 1e12))
            return CheckFault.In("uncertainty", FieldProblems.OutOfRange, text, "a standard uncertainty of 0 or more, in the unit of the value");
        uncertainty = unit is LengthUnit length ? stated * length.Nanometres : Math.Abs(((RealUnit)unit).ToSi(stated) - ((RealUnit)unit).ToSi(0));
        return null;
    }

    private static ReadOnlySpan<char> Chars(ReadOnlySpan<byte> utf8, Span<char> chars) =>
        utf8.Length <= chars.Length && Encoding.UTF8.TryGetChars(utf8, chars, out var length) ? chars[..length] : default;

    private static string Symbols(Dimension dimension) => string.Join(", ", UnitCatalogue.SymbolsOf(dimension));

    private readonly record struct RowValue(double Point, double LastDigit);
}

/// <summary>The verdict on one row.</summary>
/// <param name="Rule">What it was judged by.</param>
/// <param name="Unit">The unit it was sent in.</param>
/// <param name="Result">The result.</param>
public readonly record struct RowVerdict(CheckRule Rule, UnitOfMeasure Unit, CheckResult Result)
{
    /// <summary>Distance to the nearest limit in the unit of the row, positive inside.</summary>
    public double MarginInUnit => Unit is LengthUnit length
        ? Result.Margin / length.Nanometres
        : ((RealUnit)Unit).FromSi(Result.Margin) - ((RealUnit)Unit).FromSi(0);
}
