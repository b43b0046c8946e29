using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Planning;

/// <summary>Refuses a request that names what is not there, before anything is worked out.</summary>
internal static class RequestCheck
{
    public static void Require(PlanRequest request, FamilyIndex family)
    {
        ArgumentNullException.ThrowIfNull(request);
        foreach (var twice in request.Candidates.GroupBy(c => c.Id, StringComparer.Ordinal).Where(g => g.Count() > 1))
            throw new ArgumentException($"candidates: {twice.Key} stands in the list twice.", nameof(request));
        foreach (var candidate in request.Candidates.Where(c => c.Price < 0 || c.OnHand < 0 || c.LeadDays < 0))
            throw new ArgumentException($"candidates: {candidate.Id} has a price, a number or a time below zero.", nameof(request));
        foreach (var piece in request.Pieces.Where(p => !family.Series.TryGetValue(p.Series, out var series) || !series.Members.Any(m => m.Id == p.Member)))
            throw new ArgumentException($"pieces: there is no {piece.Series}/{piece.Member}.", nameof(request));
        foreach (var piece in request.Pieces.Where(p => p.Price < 0 || p.OnHand < 0 || p.LeadDays < 0))
            throw new ArgumentException($"pieces: {piece.Series}/{piece.Member} has a price, a number or a time below zero.", nameof(request));
        foreach (var position in request.Limits.Fixed.Keys.Concat(request.Limits.KeepOriginal).Where(p => !family.Positions.ContainsKey(p)))
            throw new ArgumentException($"limits: there is no position {position}.", nameof(request));
    }
}
