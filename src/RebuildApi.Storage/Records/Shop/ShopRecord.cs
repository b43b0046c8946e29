using System.Text.Json.Serialization.Metadata;

namespace RebuildApi.Storage;

/// <summary>A record of the shop's own: its prices, its shelf, its plans, quotes and invoice lines.</summary>
/// <typeparam name="T">The record itself.</typeparam>
public interface IShopRecord<T>
    where T : class, IShopRecord<T>
{
    /// <summary>Where it is kept.</summary>
    static abstract ShopTable<T> Table { get; }

    /// <summary>Its id.</summary>
    string Id { get; }

    /// <summary>The unit that it belongs to, if to one.</summary>
    string? OfUnit { get; }

    /// <summary>What else it is looked for by, if by anything: the kind of a part, the quote of an approval.</summary>
    string? About { get; }

    /// <summary>Row version; 1 for what is never edited.</summary>
    long Version { get; }

    /// <summary>The same record at another version.</summary>
    T At(long version);
}

/// <summary>Where one sort of record of the shop is kept. All these tables have the same columns; the body stands in the chain.</summary>
/// <typeparam name="T">The record.</typeparam>
public sealed class ShopTable<T>
    where T : class, IShopRecord<T>
{
    internal ShopTable(string kind, bool isEdited, JsonTypeInfo<T> shape, bool isOfUnit = true)
    {
        (Kind, IsEdited, Shape, IsOfUnit) = (kind, isEdited, shape, isOfUnit);
        Name = kind.Replace('-', '_');
    }

    /// <summary>The word for its entries in the chain.</summary>
    public string Kind { get; }

    /// <summary>Whether its rows get new versions; otherwise they are only added.</summary>
    public bool IsEdited { get; }

    internal string Name { get; }

    internal bool IsOfUnit { get; }

    internal JsonTypeInfo<T> Shape { get; }
}

/// <summary>A record with its place in the chain.</summary>
/// <param name="Sequence">Number of its entry.</param>
/// <param name="Value">The record.</param>
public sealed record Recorded<T>(long Sequence, T Value);

/// <summary>Which of the shop's own records are wanted.</summary>
/// <param name="Unit">Only those of this unit; null for all.</param>
/// <param name="About">Only those about this; null for all.</param>
public sealed record ShopFilter(string? Unit = null, string? About = null)
{
    /// <summary>Every one.</summary>
    public static ShopFilter Every { get; } = new();
}
