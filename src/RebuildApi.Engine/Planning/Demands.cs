using RebuildApi.Contracts;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Planning;

/// <summary>Everything that a plan must meet, by the name that the tables and sums bear.</summary>
internal sealed class Demands
{
    private readonly Dictionary<string, PlanDemand> _all = new(StringComparer.Ordinal);

    public PlanDemand this[string name] => _all[name];

    /// <summary>Those of one name stand together.</summary>
    public string Part(string place) => Add($"part:{place}", place, DemandKind.Part, Because.Of("demand-part", place));

    public string Pairing(string rule, string name) => Add($"pairing:{rule}", rule, DemandKind.Pairing, Because.Of("demand-pairing", rule, ("pairing", name)));

    public string Clearance(string loop, string name) => Add($"clearance:{loop}", loop, DemandKind.Clearance, Because.Of("demand-clearance", loop, ("clearance", name)));

    public string Set(MatchedSet set) => Add($"set:{set.Id}", set.Id, DemandKind.Set, Because.Of("demand-set", set.Id, ("positions", string.Join(", ", set.Positions))));

    public string Stock(string name, int onHand) => Add($"stock:{name}", name, DemandKind.Stock, Because.Of("demand-stock", name, ("onHand", onHand)));

    public string Limit(string what, string subject, object? value = null) =>
        Add($"limit:{what}:{subject}", subject, DemandKind.Limit, Because.Of($"demand-{what}", subject, ("value", value)));

    private string Add(string name, string id, DemandKind kind, Reason reason)
    {
        _all.TryAdd(name, new PlanDemand(id, kind, reason));
        return name;
    }
}
