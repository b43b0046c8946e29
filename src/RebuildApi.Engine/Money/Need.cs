namespace RebuildApi.Engine.Money;

/// <summary>How much a line of a quote is needed.</summary>
public enum Need
{
    /// <summary>The unit can't go back without it.</summary>
    Required,

    /// <summary>It can go back without it, but the shop advises it.</summary>
    Recommended,

    /// <summary>As the customer likes.</summary>
    Optional,
}

/// <summary>A line of a quote before it is priced.</summary>
/// <param name="Price">What it costs.</param>
/// <param name="Need">How much it is needed.</param>
/// <param name="Chance">Chance that it will be needed at all, 0..1; 1 when that is settled.</param>
public sealed record QuoteLine(PriceLine Price, Need Need, decimal Chance);
