using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Pairings;

/// <summary>Rules, snapshots and judging in few words.</summary>
internal static class Bench
{
    public static PairingRule Rule(string template, params (string Role, string Place)[] roles) => new(
        "rule", Words("rule"), template, roles.ToImmutableSortedDictionary(r => r.Role, r => r.Place),
        ImmutableSortedDictionary<string, Quantity>.Empty, ImmutableSortedDictionary<string, string>.Empty,
        Compatibility.Incompatible, Severity.Malfunction, Words("consequence"), [], Invented);

    public static PairingRule With(this PairingRule rule, string parameter, Quantity value) => rule with
    {
        Parameters = rule.Parameters.ToImmutableSortedDictionary().SetItem(parameter, value),
    };

    public static PairingRule With(this PairingRule rule, string option, string value) => rule with
    {
        Options = rule.Options.ToImmutableSortedDictionary().SetItem(option, value),
    };

    public static Exact Mm(decimal millimetres) => new(Length.Millimetres(millimetres));

    public static Real Degrees(double degrees) => new(degrees * Math.PI / 180, Dimension.Angle);

    public static Characteristic AngleOf(string id) => new(
        id, Words(id), Dimension.Angle, Statistic.Mean, 1, null, null, Distribution.None, Criticality.Ordinary, null, []);

    public static SnapshotBuilder ReadsAngle(this SnapshotBuilder builder, string component, string characteristic, double degrees) => builder.Reads(
        component, characteristic, null,
        [new Reading(null, null, degrees * Math.PI / 180, (degrees * Math.PI / 180).ToString("F17", System.Globalization.CultureInfo.InvariantCulture), "rad", null)]);

    public static EstimateBook Book(Family family, UnitSnapshot snapshot) => new(new UnitView(snapshot, Index(family)));

    public static FamilyIndex Index(Family family) => s_indexes.GetValue(family, f => new FamilyIndex(f));

    private static readonly System.Runtime.CompilerServices.ConditionalWeakTable<Family, FamilyIndex> s_indexes = [];

    public static PairingVerdict Judge(this PairingRule rule, Family family, SnapshotBuilder snapshot) =>
        PairingJudge.Judge(rule, Book(family, snapshot.Snapshot));

    public static Compatibility Outcome(this PairingRule rule, Family family, SnapshotBuilder snapshot) =>
        PairingJudge.Outcome(rule, Book(family, snapshot.Snapshot));

    public static IEnumerable<string> Codes(this PairingVerdict verdict) => verdict.Reasons.Select(r => r.Code);
}
