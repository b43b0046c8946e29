using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Judging;

/// <summary>What has not been read or seen yet, in stripping order: the to-do list of the teardown.</summary>
public static class MissingList
{
    /// <summary>Everything missing of a unit.</summary>
    public static ImmutableArray<Missing> Of(EstimateBook book, ImmutableArray<PartAnswer> parts, ImmutableArray<PairingVerdict> pairings)
    {
        var family = book.View.Family;
        var inLoops = family.Family.Loops.SelectMany(l => l.Terms).Select(t => t.Of).OfType<OfPart>().Select(p => p.At).ToHashSet();
        var settles = pairings.Where(p => p.Outcome == Compatibility.NotAssessed).SelectMany(p => p.Settles).ToHashSet();
        return [.. parts.SelectMany(part => Of(part, book, inLoops, settles))];
    }

    private static IEnumerable<Missing> Of(PartAnswer part, EstimateBook book, HashSet<Address> inLoops, HashSet<Address> settles)
    {
        var position = book.View.Family.Positions[part.Position];
        if (part.Component is null)
            return [new Missing(part.Position, part.Index, MissingWhat.Part, part.Position, position.Name)];
        var placed = book.View.At(part.Position).First(p => p.Placement.Index == part.Index);
        var kind = book.View.Family.Kinds[placed.Component.Kind];
        return Inspection(part, position)
            .Concat(Attributes(placed, kind, book.View, settles))
            .Concat(Readings(placed, kind, book, inLoops, settles));
    }

    private static IEnumerable<Missing> Inspection(PartAnswer part, Position position) => part.Condition.Outcome == Outcome.NotAssessed
        ? [new Missing(part.Position, part.Index, MissingWhat.Inspection, part.Position, position.Name)]
        : [];

    private static IEnumerable<Missing> Attributes(PlacedComponent placed, PartKind kind, UnitView view, HashSet<Address> settles) => kind.Attributes
        .Where(a => settles.Contains(new Address(placed.Placement.Position, a.Id)) && view.AttributeOf(placed.Component, a.Id) is null)
        .Select(a => new Missing(placed.Placement.Position, placed.Placement.Index, MissingWhat.Attribute, a.Id, a.Name));

    private static IEnumerable<Missing> Readings(PlacedComponent placed, PartKind kind, EstimateBook book, HashSet<Address> inLoops, HashSet<Address> settles)
    {
        var position = placed.Placement.Position;
        return kind.Characteristics
            .Where(c => c.DerivedFrom is null && (IsAskedFor(c) || kind.Characteristics.Any(d => Feeds(c, d, position) && IsAskedFor(d))))
            .Where(c => book.Of(placed, c).Basis is EstimateBasis.None or EstimateBasis.Drawing)
            .Select(c => new Missing(position, placed.Placement.Index, MissingWhat.Reading, c.Id, c.Name));

        bool IsAskedFor(Characteristic c)
        {
            var at = new Address(position, c.Id);
            return c.Service is not null || book.View.Family.ServiceLimitsAt(at) is not null || inLoops.Contains(at) || settles.Contains(at);
        }
    }

    // Who is asked for what follows from a reading is asked for the reading.
    private static bool Feeds(Characteristic read, Characteristic derived, string position) =>
        Inputs.Of(derived).Any(a => a.Characteristic == read.Id && (a.IsOfKind || a.Position == position));
}
