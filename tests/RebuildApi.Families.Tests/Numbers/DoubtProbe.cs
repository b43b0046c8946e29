using System.Globalization;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>
/// What is said at the door of a reading with its decimal point slipped, such that the value that was meant would just be likely: it stands on the end of
/// the band about the limits, which is as wide again as they are on either side.
/// </summary>
internal sealed class DoubtProbe(Family family)
{
    private readonly ImmutableArray<(Address At, Measurement Measurement)> _readings = [.. Readings(new FamilyIndex(family))];

    public string Ask(Family changed)
    {
        var index = new FamilyIndex(changed);
        return string.Join('\n', _readings.Select(r => Said.Of(Plausibility.Check(r.Measurement, index.CharacteristicAt(r.At)!, index.NewLimitsAt(r.At), index.ServiceLimitsAt(r.At), null))));
    }

    private static IEnumerable<(Address At, Measurement Measurement)> Readings(FamilyIndex index) =>
        from p in index.Family.Positions
        from c in index.Kinds[p.Kind].Characteristics
        let at = new Address(p.Id, c.Id)
        let ends = new[] { index.NewLimitsAt(at), index.ServiceLimitsAt(at) }.SelectMany(l => new[] { l?.Low, l?.High }).OfType<Exact>().Select(e => e.Value.Nanometres).ToArray()
        where ends.Length > 1
        select (at, Reading($"{at}", c.Id, 10 * (ends.Max() + (ends.Max() - ends.Min()))));

    private static Measurement Reading(string id, string characteristic, long nanometres)
    {
        var sent = new Length(nanometres);
        return new Measurement(id, id, 1, characteristic, [Contracts.Reading.Of(sent, sent.InMillimetres.ToString(CultureInfo.InvariantCulture), "mm")], SnapshotBuilder.Taken(null), null);
    }
}
