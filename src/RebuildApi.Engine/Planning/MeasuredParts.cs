using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Engine.Planning;

/// <summary>
/// New parts that could be asked for by a dimension: where none that stands on its drawing would do, one that measures what a clearance in the way leaves room for.
/// </summary>
internal static class MeasuredParts
{
    /// <summary>How many values between the ends are tried.</summary>
    private const int Tries = 5;

    /// <summary>Candidates like the part that came in, each with one dimension read: values between what the clearances in the way and the limits of the place leave.</summary>
    public static IEnumerable<(Characteristic Of, Length Value, PlanCandidate Part)> Of(int place, PlanModel model, PlanProblem problem, PlanSolution without, IReadOnlySet<string> demands)
    {
        var at = model.Places[place];
        foreach (var loop in model.Book.View.Family.Family.Loops.Where(l => demands.Contains($"clearance:{l.Id}")))
        {
            var own = loop.Terms.Where(t => t.Of is OfPart p && p.At.Position == at.Position.Id).ToArray();
            if (own.Length != 1 || problem.Sums.FirstOrDefault(s => s.Demand == $"clearance:{loop.Id}") is not { } sum
                || model.Book.View.Family.CharacteristicAt(((OfPart)own[0].Of).At) is not { } wanted || RoomFor(own[0], loop, sum, place, model, without) is not { } room)
                continue;
            foreach (var value in Between(room, Conformity.CharacteristicJudge.LimitsAt(new Address(at.Position.Id, wanted.Id), model.Book.View)))
                yield return (wanted, value, Measured(Variants.Of(at, model.Book)[0], wanted, value));
        }
    }

    /// <summary>What one member may measure, whatever piece is taken: the window less the others, pieces from thinnest to thickest.</summary>
    private static (long Low, long High)? RoomFor(Term own, ClearanceLoop loop, PlanSum sum, int place, PlanModel model, PlanSolution without)
    {
        var scale = loop.Terms.Aggregate(1L, (lcm, t) => Math.Max(lcm, t.Denominator) % Math.Min(lcm, t.Denominator) == 0 ? Math.Max(lcm, t.Denominator) : lcm * t.Denominator);
        var factor = own.Numerator * (scale / own.Denominator);
        var (least, most) = (0L, 0L);
        foreach (var term in sum.Terms.Where(t => t.Choice != place))
        {
            var amounts = model.Places[term.Choice].Series is null ? [term.Amounts[without.Picks[term.Choice]]] : term.Amounts;
            if (amounts.Any(a => a is null))
                return null;
            (least, most) = (least + amounts.Min()!.Value, most + amounts.Max()!.Value);
        }

        if (sum.Low == long.MinValue || sum.High == long.MaxValue)
            return null;
        var (one, other) = ((sum.Low - most) / factor, (sum.High - least) / factor);
        return (Math.Min(one, other), Math.Max(one, other));
    }

    private static IEnumerable<Length> Between((long Low, long High) room, Limits? limits)
    {
        var low = Math.Max(room.Low, limits?.Low is Exact l ? l.Value.Nanometres : long.MinValue);
        var high = Math.Min(room.High, limits?.High is Exact h ? h.Value.Nanometres : long.MaxValue);
        return low > high ? [] : Enumerable.Range(1, Tries).Select(i => new Length(low + ((high - low) / (Tries + 1) * i)));
    }

    private static PlanCandidate Measured(PlanCandidate plain, Characteristic wanted, Length value)
    {
        var id = $"{plain.Id}-{value.Nanometres}";
        var component = plain.Part.Component with { Id = id };
        var reading = Contracts.Reading.Of(value, value.InMillimetres.ToString(CultureInfo.InvariantCulture), "mm");
        var measurement = new Measurement(
            $"{id}/{wanted.Id}", id, 1, wanted.Id, [.. Enumerable.Repeat(reading, wanted.MinimumReadings)], new Taken(null, null, "", "", DateTimeOffset.UnixEpoch, null), null);
        return plain with { Id = id, Part = plain.Part with { Component = component, Measurements = [measurement] } };
    }
}
