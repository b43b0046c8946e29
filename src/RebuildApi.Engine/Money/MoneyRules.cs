using System.Globalization;

namespace RebuildApi.Engine.Money;

/// <summary>How the shop counts money. One currency for each shop.</summary>
/// <param name="Currency">ISO 4217 code: <c>EUR</c>.</param>
/// <param name="Digits">How many decimals its minor unit has (ISO 4217): 2 for most.</param>
/// <param name="Rounding">Where halves go.</param>
/// <param name="TaxRounding">On what tax is rounded.</param>
public sealed record MoneyRules(string Currency, int Digits, Rounding Rounding, TaxRounding TaxRounding)
{
    /// <summary>An exact amount as whole minor units.</summary>
    /// <exception cref="OverflowException">It is larger than 64 bits hold.</exception>
    public long Whole(decimal minor) =>
        decimal.ToInt64(Math.Round(minor, Rounding == Rounding.HalfUp ? MidpointRounding.AwayFromZero : MidpointRounding.ToEven));

    /// <summary>An amount in words: <c>98.76 EUR</c>.</summary>
    public string Words(long minor)
    {
        var major = new decimal(minor);
        for (var i = 0; i < Digits; i++)
            major /= 10;
        return major.ToString("F" + Digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) + " " + Currency;
    }
}

/// <summary>A rate of tax.</summary>
/// <param name="Id">What the shop calls it: <c>standard</c>.</param>
/// <param name="Category">Duty or tax category code of UNTDID 5305 as EN 16931-1 uses it: S, Z, E, AE, K, G, O, L or M.</param>
/// <param name="Percent">The rate in percent; 0 or more.</param>
public sealed record TaxRate(string Id, string Category, decimal Percent);
