using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Clearances;

/// <summary>How far a cut may go by the limits of the face itself: what the operation permits, what must remain, and the hardened layer.</summary>
/// <param name="FewestSteps">The smallest cut that can be made at all, in steps.</param>
/// <param name="MostSteps">The largest, in steps; none when what limits it is not known. Below the fewest: it may not be made.</param>
/// <param name="Because">What limits it, or what is not known.</param>
internal sealed record CutLimit(int FewestSteps, int? MostSteps, Reason Because)
{
    /// <summary>The characteristic of a kind that holds the depth of its hardened layer (ISO 18203: to 550 HV).</summary>
    public const string CaseDepth = "case-depth";

    /// <summary>The limit of a cut on the part that counts in its position.</summary>
    public static CutLimit Of(Cut cut, EstimateBook book) =>
        cut.Operation.Effects.Select(e => OfEffect(cut, e, book)).Aggregate(Narrower);

    private static CutLimit OfEffect(Cut cut, Effect effect, EstimateBook book)
    {
        var at = new Address(cut.Position, effect.At.Characteristic);
        var removes = effect.MinChange < Length.Zero;
        var most = Steps(removes ? -effect.MinChange : effect.MaxChange, effect.Step);
        var fewest = removes && effect.MaxChange < Length.Zero ? Steps(-effect.MaxChange + effect.Step - new Length(1), effect.Step) : 0;
        var limit = new CutLimit(fewest, most, Reasons.Because.Of("cut-limited-by-operation", cut.Id, ("at", at), ("mostNm", most * effect.Step)));
        if (effect.Remaining is { } remaining)
            limit = Narrower(limit, ByRemaining(cut, effect, at, remaining, book.Of(at), fewest));
        return effect.ShareOfCaseDepth is { } share ? Narrower(limit, ByCaseDepth(cut, effect, share, DepthOf(cut, effect, book), fewest)) : limit;
    }

    /// <summary>
    /// What must remain counts with twice the standard uncertainty of the part held back: the end that the cut goes towards bounds it, the end that it comes from
    /// says how much must come off before the part is right at all.
    /// </summary>
    private static CutLimit ByRemaining(Cut cut, Effect effect, Address at, Limits remaining, Estimate now, int fewest)
    {
        if (now.Value is not Exact value || now.Basis == EstimateBasis.Drawing)
            return new CutLimit(fewest, null, Reasons.Because.Of("cut-part-not-read", cut.Id, ("at", at)));
        var guard = Length.NearestToMetres(2 * now.StandardUncertainty);
        var (low, high) = ((remaining.Low as Exact)?.Value, (remaining.High as Exact)?.Value);
        var (room, owed) = effect.MinChange < Length.Zero
            ? (value.Value - guard - low ?? -effect.MinChange, value.Value + guard - high)
            : (high - value.Value - guard ?? effect.MaxChange, low - value.Value + guard);
        return new CutLimit(Math.Max(fewest, FewestFor(owed, effect.Step)), Steps(room, effect.Step), Reasons.Because.Of(
            "cut-limited-by-what-must-remain", cut.Id, ("at", at), ("mostNm", room)));
    }

    /// <summary>Steps until the part has come within the other end of what must remain; none when it is there.</summary>
    private static int FewestFor(Length? owed, Length step) => owed is { } by && by > Length.Zero ? Steps(by + step - new Length(1), step) : 0;

    private static CutLimit ByCaseDepth(Cut cut, Effect effect, double share, Estimate depth, int fewest)
    {
        if (depth.Value is not Exact value)
            return new CutLimit(fewest, null, Reasons.Because.Of("cut-case-depth-unknown", cut.Id, ("position", cut.Position), ("datum", effect.Datum)));
        var surely = Math.Max(0, value.Value.InMetres - (2 * depth.StandardUncertainty));
        var room = new Length((long)Math.Floor(share * surely * 1e9 + 1e-6));
        return new CutLimit(fewest, Steps(room, effect.Step), Reasons.Because.Of(
            "cut-limited-by-hardened-layer", cut.Id, ("depthNm", value.Value), ("percent", 100 * share), ("mostNm", room)));
    }

    /// <summary>The depth of the layer on the face itself where the kind tells faces apart, else that of the part.</summary>
    private static Estimate DepthOf(Cut cut, Effect effect, EstimateBook book)
    {
        var ofFace = book.Of(new Address(cut.Position, $"{effect.Datum}.{CaseDepth}"));
        return ofFace.Basis != EstimateBasis.None ? ofFace : book.Of(new Address(cut.Position, CaseDepth));
    }

    private static CutLimit Narrower(CutLimit a, CutLimit b)
    {
        var narrower = b.MostSteps is null ? (a.MostSteps is null ? a : b) : a.MostSteps is null || a.MostSteps <= b.MostSteps ? a : b;
        return narrower with { FewestSteps = Math.Max(a.FewestSteps, b.FewestSteps) };
    }

    private static int Steps(Length room, Length step) => room <= Length.Zero ? 0 : (int)Math.Min(int.MaxValue, room.Nanometres / step.Nanometres);
}
