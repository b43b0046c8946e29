using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>
/// What the clearances advise to machine when no piece fits, a little short and far short, with the part that would be cut as drawn, with as much metal as may
/// be and with little left, with a thin hardened layer and with a thick one.
/// </summary>
internal sealed class CutProbe
{
    private static readonly long[] s_short = [.. new long[] { 0, 60_000, 150_000, 250_000, 350_000, 450_000, 600_000, 1_800_000 }.SelectMany(n => new[] { n, -n })];

    private const int Enough = 4;

    private readonly ImmutableArray<(string Operation, string Loop, Bench Bench)> _cases;

    public CutProbe(Bench sound)
    {
        var index = new FamilyIndex(sound.Family);
        _cases =
        [
            .. from cut in Cut.Of(index)
               from loop in sound.Family.Loops
               where cut.Touches(loop, index) && loop.Terms.Any(t => t.Of is OfSeries)
               from missing in s_short
               from own in Own(sound, cut)
               select (cut.Operation.Id, loop.Id, ShortBy(Emptied(own, loop), loop, cut, missing, index)),
        ];
    }

    /// <summary>Units in which no piece does and a cut by an operation brings the gap into its window, those that are the least short first, a few.</summary>
    public IEnumerable<Bench> Needing(string operation) => _cases.Where(c => c.Operation == operation).Select(c => (c.Bench, Ring: Answer(c.Loop, c.Bench.Family, c.Bench).Ring))
        .Where(x => x.Ring?.Miss is not null && x.Ring.Cuts.Any(a => a.Operation == operation && a.Permission is CutPermission.Permitted or CutPermission.ToEnterOnly))
        .Select(x => x.Bench).Take(Enough);

    public string Ask(Family changed, string operation) => string.Join('\n', _cases.Where(c => c.Operation == operation).Select(c => Said.Of(Answer(c.Loop, changed, c.Bench).Ring)));

    private static ClearanceAnswer Answer(string loop, Family family, Bench bench)
    {
        var index = new FamilyIndex(family);
        return ClearanceJudge.Judge(index.Loops[loop], new EstimateBook(new UnitView(bench.Snapshot, index)));
    }

    /// <summary>The part to be cut: as drawn; at either end of what may go back; near the end that must remain, on either side; with a thin layer and a thick one.</summary>
    private static IEnumerable<Bench> Own(Bench sound, Cut cut)
    {
        yield return sound;
        var index = new FamilyIndex(sound.Family);
        foreach (var effect in cut.Operation.Effects)
        {
            var at = $"{cut.Position}/{effect.At.Characteristic}";
            foreach (var end in Ends(index.ServiceLimitsAt(Address.TryParse(at)!)))
            {
                yield return Reads(sound, at, end);
                yield return Layered(Reads(sound, at, end), cut, Length.Millimetres(2m));
            }

            if (effect.Remaining?.Low is Exact low)
                yield return Reads(sound, at, low.Value + Length.Micrometres(40));
            if (effect.Remaining?.High is Exact high)
                yield return Reads(sound, at, high.Value - Length.Micrometres(40));
            if (effect.ShareOfCaseDepth is not null)
                yield return Layered(sound, cut, Length.Millimetres(0.5m));
        }
    }

    private static IEnumerable<Length> Ends(Limits? limits) => new[] { limits?.Low, limits?.High }.OfType<Exact>().Select(e => e.Value);

    private static Bench Layered(Bench bench, Cut cut, Length depth) => bench.Family.Kinds.Single(k => k.Id == cut.Operation.Kind).Characteristics
        .Where(c => c.Id.EndsWith("case-depth", StringComparison.Ordinal)).Aggregate(bench, (b, c) => Reads(b, $"{cut.Position}/{c.Id}", depth));

    private static Bench Reads(Bench bench, string at, Length value) => bench.Reads(at, 1, [.. Enumerable.Repeat(Gauges.Reading(new Exact(value)), 9)]);

    private static Bench Emptied(Bench bench, ClearanceLoop loop) =>
        loop.Terms.Select(t => t.Of).OfType<OfSeries>().Aggregate(bench, (b, s) => b.Empties(s.Position));

    /// <summary>The other parts of the loop are together so far off their drawing, each in proportion to how far it may be off and still go back.</summary>
    private static Bench ShortBy(Bench bench, ClearanceLoop loop, Cut cut, long nanometres, FamilyIndex index)
    {
        var others = loop.Terms
            .Where(t => t.Of is OfPart part && part.At.Position != cut.Position && index.CharacteristicAt(part.At)!.DerivedFrom is null && Math.Abs(t.Numerator) == t.Denominator)
            .Select(t => (((OfPart)t.Of).At, Sign: Math.Sign(t.Numerator), Room: Room(index.ServiceLimitsAt(((OfPart)t.Of).At)))).ToArray();
        var room = others.Sum(o => o.Room);
        return others.Aggregate(bench, (b, o) => Reads(b, o.At.ToString(), Middle(index.NewLimitsAt(o.At)!) - new Length((long)(o.Sign * (decimal)nanometres * o.Room / room))));
    }

    private static Length Middle(Limits drawing) => new((((Exact)drawing.Low!).Value.Nanometres + ((Exact)drawing.High!).Value.Nanometres) / 2);

    private static long Room(Limits? limits) => limits is { Low: Exact low, High: Exact high } ? high.Value.Nanometres - low.Value.Nanometres : 0;
}
