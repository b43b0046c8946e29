using System.Collections.Frozen;
using RebuildApi.Contracts;
using RebuildApi.Engine.Checking;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Server.Checks;

/// <summary>What rows are judged by: every loaded family as a flat table, and the instruments of the shop. Made once, then only read.</summary>
public sealed class CheckBook
{
    private readonly FrozenDictionary<string, CheckTable> _families;
    private readonly FrozenDictionary<string, CheckTable>.AlternateLookup<ReadOnlySpan<char>> _familyBySpan;
    private readonly FrozenDictionary<string, InstrumentState> _instruments;
    private readonly FrozenDictionary<string, FrozenDictionary<Dimension, double>>.AlternateLookup<ReadOnlySpan<char>> _uncertaintyBySpan;

    /// <summary>Makes the tables.</summary>
    /// <param name="families">The families.</param>
    /// <param name="instruments">The instruments.</param>
    /// <param name="policyOf">The shop's policy as it stands for a family.</param>
    public CheckBook(IEnumerable<FamilyIndex> families, IEnumerable<InstrumentState> instruments, Func<string, Policy> policyOf)
    {
        _families = families.ToFrozenDictionary(f => f.Family.Version.Id, f => CheckTable.Of(f, policyOf(f.Family.Version.Id)), StringComparer.Ordinal);
        _familyBySpan = _families.GetAlternateLookup<ReadOnlySpan<char>>();
        _instruments = instruments.ToFrozenDictionary(i => i.Id, StringComparer.Ordinal);
        _uncertaintyBySpan = _instruments.Values
            .ToFrozenDictionary(i => i.Id, ByDimension, StringComparer.Ordinal)
            .GetAlternateLookup<ReadOnlySpan<char>>();
    }

    /// <summary>Ids of the families.</summary>
    public IEnumerable<string> Families => _families.Keys;

    /// <summary>Ids of the instruments.</summary>
    public IEnumerable<string> Instruments => _instruments.Keys;

    /// <summary>The table of a family, or null.</summary>
    public CheckTable? Family(ReadOnlySpan<char> id) => _familyBySpan.TryGetValue(id, out var table) ? table : null;

    /// <summary>Whether an instrument is registered, and the standard uncertainty of one reading by it.</summary>
    /// <param name="id">The instrument.</param>
    /// <param name="dimension">What was read.</param>
    /// <param name="uncertainty">On the scale of the rule; NaN when the instrument measures something else.</param>
    public bool Knows(ReadOnlySpan<char> id, Dimension dimension, out double uncertainty)
    {
        uncertainty = double.NaN;
        if (!_uncertaintyBySpan.TryGetValue(id, out var byDimension))
            return false;
        uncertainty = byDimension.GetValueOrDefault(dimension, double.NaN);
        return true;
    }

    private static FrozenDictionary<Dimension, double> ByDimension(InstrumentState instrument) => Enum.GetValues<Dimension>()
        .Select(d => (Dimension: d, Uncertainty: InstrumentUncertainty.Of(instrument, d)))
        .Where(x => x.Uncertainty is not null)
        .ToFrozenDictionary(x => x.Dimension, x => x.Uncertainty!.Value);
}
