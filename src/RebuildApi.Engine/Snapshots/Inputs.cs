using RebuildApi.Contracts;

namespace RebuildApi.Engine.Snapshots;

/// <summary>What a characteristic follows from.</summary>
internal static class Inputs
{
    /// <summary>The addresses that feed it, those without a position on the same part; none when it is read itself.</summary>
    public static IEnumerable<Address> Of(Characteristic characteristic) => characteristic.DerivedFrom switch
    {
        Linear linear => linear.Terms.Select(t => t.Of).OfType<OfPart>().Select(p => p.At),
        Named named => named.Arguments.Values,
        _ => [],
    };
}
