namespace RebuildApi.Engine.Allocation;

/// <summary>Refuses what is no allocation problem.</summary>
internal static class AllocationCheck
{
    public static void Require(AllocationProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var parts = problem.Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        var needs = problem.Units.SelectMany(u => u.Needs.Select(n => (u.Id, n))).ToHashSet();
        if (problem.Units.Select(u => u.Id).Distinct(StringComparer.Ordinal).Count() != problem.Units.Length || needs.Count != problem.Units.Sum(u => u.Needs.Length))
            throw new ArgumentException("units: each unit once, and each of its places once.", nameof(problem));
        foreach (var offer in problem.Offers)
        {
            if (!parts.ContainsKey(offer.Part) || !needs.Contains((offer.Unit, offer.Place)))
                throw new ArgumentException($"offers: {offer.Part} in {offer.Place} of {offer.Unit} names what is not there.", nameof(problem));
            if (offer.Cost is < 0 or > 1_000_000_000_000)
                throw new ArgumentException($"offers: {offer.Part} in {offer.Place} of {offer.Unit} has a cost out of range.", nameof(problem));
        }

        if (problem.Offers.Select(o => (o.Part, o.Unit, o.Place)).Distinct().Count() != problem.Offers.Length)
            throw new ArgumentException("offers: a part is offered twice for one place.", nameof(problem));
    }
}
