using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Engine.Planning;

/// <summary>What is demanded of each place by itself: that the part conforms, and what the request says of it.</summary>
internal sealed class SingleDemands(PlanModel model)
{
    private readonly PlanLimits _limits = model.Request.Limits;

    /// <summary>The tables over one place.</summary>
    public IEnumerable<PlanTable> Of(PlanPlace place, int at)
    {
        var position = place.Position.Id;
        yield return Where(model.Demands.Part(place.Subject), at, (_, s) => s.Outcome != Outcome.Nonconforming);
        if (!_limits.AcceptOpen || model.Request.Objective == PlanObjective.MostConservative)
            yield return Where(model.Demands.Limit("proven", place.Subject), at, (_, s) => !s.IsOpen);
        if (_limits.KeepOriginal.Contains(position))
            yield return Where(model.Demands.Limit("keep-original", position), at, (f, _) => f.IsOriginal);
        if (_limits.Fixed.TryGetValue(position, out var wanted))
            yield return Where(model.Demands.Limit("fixed", position, wanted), at, (f, _) => f.Id == wanted || f.Members.Contains(wanted));
        if (_limits.MostDays is { } days)
            yield return Where(model.Demands.Limit("most-days", "days", days), at, (f, _) => f.LeadDays <= days);
    }

    private PlanTable Where(string demand, int at, Func<Fit, Standing, bool> allowed) =>
        new(demand, [at], [.. model.Places[at].Fits.Zip(model.Standings[at], (f, s) => allowed(f, s) ? 0 : PlanTable.Forbidden)]);
}
