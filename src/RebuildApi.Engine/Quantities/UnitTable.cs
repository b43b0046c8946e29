using System.Collections.Frozen;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Quantities;

/// <summary>The units of one dimension by every name they have, for looking up without making a string.</summary>
public sealed class UnitTable
{
    private static readonly FrozenDictionary<Dimension, UnitTable> s_tables = Enum.GetValues<Dimension>().ToFrozenDictionary(d => d, d => new UnitTable(d));

    private readonly FrozenDictionary<string, UnitOfMeasure>.AlternateLookup<ReadOnlySpan<char>> _byName;

    private UnitTable(Dimension dimension) => _byName = UnitCatalogue.All
        .Where(u => u.Dimension == dimension)
        .SelectMany(u => u.Words.Append(u.Ucum).Append(u.Symbol).Distinct().Select(name => (name, u)))
        .ToFrozenDictionary(x => x.name, x => x.u, StringComparer.Ordinal)
        .GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The units of a dimension.</summary>
    public static UnitTable Of(Dimension dimension) => s_tables[dimension];

    /// <summary>The unit that a text names, or null.</summary>
    public UnitOfMeasure? Find(ReadOnlySpan<char> text) => _byName.TryGetValue(text, out var unit) ? unit : null;
}
