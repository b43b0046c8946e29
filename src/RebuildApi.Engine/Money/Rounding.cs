namespace RebuildApi.Engine.Money;

/// <summary>Where an amount that lies exactly between two whole minor units goes.</summary>
public enum Rounding
{
    /// <summary>Away from zero, as most invoices do.</summary>
    HalfUp,

    /// <summary>To the even neighbour.</summary>
    HalfEven,
}

/// <summary>On what tax is rounded.</summary>
public enum TaxRounding
{
    /// <summary>On each line by itself; the tax of a document is the sum of its lines.</summary>
    PerLine,

    /// <summary>
    /// Once for each rate over the sum of its lines (EN 16931-1, BR-CO-17), then shared out to the lines by largest remainder, so that the
    /// lines still add up to it.
    /// </summary>
    PerRate,
}
