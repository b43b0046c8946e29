namespace RebuildApi.Engine.Money;

/// <summary>Something with a price, before it is worked out.</summary>
/// <param name="Id">Unique among its lines.</param>
/// <param name="Quantity">How much of it; negative when it goes back.</param>
/// <param name="Price">Price without tax of <paramref name="Per"/> units, in whole minor units.</param>
/// <param name="Per">How many units the price is for (EN 16931-1, BT-149): 60 when an hourly rate meets minutes. Greater than 0.</param>
/// <param name="Tax">Its rate of tax.</param>
public sealed record PriceLine(string Id, decimal Quantity, long Price, decimal Per, TaxRate Tax);

/// <summary>A line with its amounts in whole minor units.</summary>
/// <param name="Line">What was priced.</param>
/// <param name="Net">Without tax: quantity × price ÷ per, rounded on the line (EN 16931-1, BT-131).</param>
/// <param name="Tax">Its tax.</param>
public sealed record PricedLine(PriceLine Line, long Net, long Tax)
{
    /// <summary>With tax.</summary>
    public long Gross => checked(Net + Tax);
}
