using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire.Shop;

namespace RebuildApi.Server.Pages;

/// <summary>What a plan puts into a place, in words: the part found, as it is or after work; one to order; one from the shelf; or pieces of a series.</summary>
public sealed class Fitted(Spoken named, PageWords words)
{
    /// <summary>The words.</summary>
    public string Of(PlanLineWire line)
    {
        if (!line.Members.IsEmpty)
            return words["plan.piece", ("members", string.Join(" + ", line.Members))];
        var (from, rest) = line.Candidate.Split('/', 2) is [var f, var r] ? (f, r) : (line.Candidate, "");
        return from switch
        {
            "order" => words["plan.order", ("id", rest)],
            "shelf" => words["plan.shelf", ("id", rest)],
            "found" => words["plan.found"],
            _ when from.StartsWith("found+", StringComparison.Ordinal) =>
                words["plan.worked", ("work", string.Join(", ", line.Candidate.Split('+').Skip(1).Select(named.Operation)))],
            _ => line.Candidate,
        };
    }
}
