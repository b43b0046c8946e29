using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Clearances;

/// <summary>How a dimension follows another that is changed: itself with coefficient 1, or through linear derivations.</summary>
internal static class Dependence
{
    private const int Deepest = 8;

    /// <summary>The coefficients with which <paramref name="changed"/> enters <paramref name="at"/>; none when it does not.</summary>
    public static IEnumerable<(int Numerator, int Denominator)> Of(Address at, Address changed, FamilyIndex family, int depth = 0)
    {
        if (at == changed)
        {
            yield return (1, 1);
            yield break;
        }

        if (depth == Deepest || family.CharacteristicAt(at)?.DerivedFrom is not Linear linear)
            yield break;
        foreach (var term in linear.Terms)
        {
            if (term.Of is not OfPart part)
                continue;
            var from = part.At.IsOfKind ? part.At with { Position = at.Position } : part.At;
            foreach (var (numerator, denominator) in Of(from, changed, family, depth + 1))
                yield return (checked(numerator * term.Numerator), checked(denominator * term.Denominator));
        }
    }
}
