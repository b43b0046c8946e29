using System.Collections.Immutable;
using CsCheck;
using RebuildApi.Engine.Money;

namespace RebuildApi.Engine.Tests.Money;

/// <summary>Lines and rules, any that a shop may have.</summary>
internal static class Some
{
    public static readonly TaxRate Standard = new("standard", "S", 25m);

    public static readonly MoneyRules Euro = new("EUR", 2, Rounding.HalfUp, TaxRounding.PerLine);

    private static readonly Gen<TaxRate> Rate = Among<TaxRate>(
        [Standard, new("reduced", "S", 7.25m), new("odd", "S", 19.6m), new("none", "Z", 0m), new("fine", "S", 8.875m)]);

    public static readonly Gen<MoneyRules> Rules = Gen.Select(
        Gen.Int[0, 3], Gen.Bool, Gen.Bool,
        (digits, even, perRate) => new MoneyRules("XTS", digits, even ? Rounding.HalfEven : Rounding.HalfUp, perRate ? TaxRounding.PerRate : TaxRounding.PerLine));

    private static readonly Gen<PriceLine> Line = Gen.Select(
        Gen.Int[-4000, 4000], Gen.Long[0, 500_000], Among([1m, 60m, 100m]), Rate,
        (thousandths, price, per, rate) => new PriceLine("", thousandths / 1000m, price, per, rate));

    public static readonly Gen<ImmutableArray<PriceLine>> Lines = Line.Array[0, 30].Select(lines => lines.Select((l, i) => l with { Id = $"line-{i}" }).ToImmutableArray());

    public static readonly Gen<ImmutableArray<QuoteLine>> Quote = Gen.Select(
        Line.Array[1, 20], Gen.Int[0, 2].Array[20], Gen.Int[0, 100].Array[20],
        (lines, needs, chances) => lines.Select((l, i) => new QuoteLine(
            l with { Id = $"line-{i}", Quantity = Math.Abs(l.Quantity) }, (Need)needs[i], chances[i] / 100m)).ToImmutableArray());

    private static Gen<T> Among<T>(T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);
}
