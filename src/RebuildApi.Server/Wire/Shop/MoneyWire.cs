using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Shop;

/// <summary>An amount in whole minor units of its currency: 12000 and EUR are 120 euros.</summary>
/// <param name="Minor">Whole minor units.</param>
/// <param name="Currency">ISO 4217 code.</param>
public sealed record MoneyWire(long Minor, string Currency)
{
    /// <summary>An amount in the shop's currency.</summary>
    public static MoneyWire Of(long minor, Rates rates) => new(minor, rates.Currency);
}

/// <summary>An amount that is sent: 0 or more, in whole minor units of the shop's currency.</summary>
/// <param name="Minor">Whole minor units.</param>
/// <param name="Currency">ISO 4217 code; the shop's.</param>
public sealed record MoneyRequest([Between(0, 2_000_000_000)] int Minor, [Words(3)] string Currency);
