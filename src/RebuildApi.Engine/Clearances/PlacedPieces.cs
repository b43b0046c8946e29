using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Clearances;

/// <summary>The selective pieces that count at one position, added up.</summary>
/// <param name="Of">Series and position.</param>
/// <param name="Thickness">Their thickness together; basis none when no piece is there or one of them is unknown.</param>
/// <param name="Members">Which members they are sold as, thinnest first; empty when that is not known.</param>
internal sealed record PlacedPieces(OfSeries Of, Estimate Thickness, ImmutableArray<string> Members)
{
    /// <summary>The characteristic that every selective kind has: what a micrometer reads on the piece.</summary>
    public const string ThicknessCharacteristic = "thickness";

    /// <summary>The attribute of a component that says which member of its series it is sold as.</summary>
    public const string MemberAttribute = "member";

    /// <summary>Whether the thickness is known.</summary>
    public bool AreKnown => Thickness.Basis != EstimateBasis.None;

    /// <summary>Finds what sits, or is chosen to sit, at a position.</summary>
    public static PlacedPieces At(OfSeries of, EstimateBook book)
    {
        var series = SeriesOf(of, book.View.Family);
        var pieces = book.View.At(of.Position).Where(p => Counts(p, book.View.Family)).ToImmutableArray();
        var each = pieces.Select(p => ThicknessOf(p, series, of.Position, book)).ToImmutableArray();
        var members = pieces.Select(p => MemberOf(p.Component, series)?.Id).ToImmutableArray();
        return new PlacedPieces(of, Together(each), members.Any(m => m is null) ? [] : [.. members.Order(StringComparer.Ordinal)!]);
    }

    /// <summary>The series that a term names.</summary>
    /// <exception cref="ArgumentException">There is no such series.</exception>
    public static Series SeriesOf(OfSeries of, FamilyIndex family) => family.Series.TryGetValue(of.Series, out var series)
        ? series
        : throw new ArgumentException($"There is no series {of.Series}.", nameof(of));

    /// <summary>A single-use piece that was merely found there does not go back, so it is still to be chosen.</summary>
    private static bool Counts(PlacedComponent placed, FamilyIndex family) =>
        placed.Placement.Role != PlacementRole.Found || !(family.Kinds.TryGetValue(placed.Component.Kind, out var kind) && kind.SingleUse);

    private static Estimate ThicknessOf(PlacedComponent placed, Series series, string position, EstimateBook book)
    {
        if (book.View.MeasurementsOf(placed.Component, ThicknessCharacteristic).Any())
            return book.Of(new Address(position, ThicknessCharacteristic), placed.Placement.Index);
        return MemberOf(placed.Component, series) is { } member ? TermValue.Within(member.Thickness, series.Tolerance) : TermValue.Unknown;
    }

    private static SeriesMember? MemberOf(Component component, Series series) =>
        series.Members.FirstOrDefault(m => m.Id == component.Attributes.GetValueOrDefault(MemberAttribute) || m.Id == component.Label);

    private static Estimate Together(ImmutableArray<Estimate> each)
    {
        if (each.Length == 0)
            return TermValue.Unknown;
        var unit = new Term(new Fixed(Length.Zero), 1);
        return LoopValue.Sum([.. each.Select((e, i) => TermValue.Of(unit, $"piece-{i + 1}", e))]).Estimate;
    }
}
