using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>What must be decided and agreed before parts are ordered and fitted.</summary>
public static class DecisionRequirements
{
    /// <summary>A plan is chosen, or whatever does not conform has a decision of its own.</summary>
    public static readonly Requirement Decided = new("decided", "It is decided what becomes of each part", Leave.Exception, f =>
        f.HasPlan
            ? []
            : VerdictRequirements.Undecided(f).Select(b => new Unmet(
                b.Subject, f.Judged.Family.Say(b.Reason), "Choose a plan (POST to /plans and to the approvals of the one chosen), or POST to /decisions of the unit.")));

    /// <summary>The customer has agreed to what will be done.</summary>
    public static readonly Requirement Approval = new("approval", "The customer has agreed", Leave.Exception, f => f.Standing?.State switch
    {
        "agreed" or "covered" => [],
        "ask-again" => [new(null, "The newest quote goes beyond what the customer agreed to.", "Ask again, and POST to /quote/approvals of the unit.")],
        "none" => [new(null, "Nobody has agreed to the quote.", "Ask the customer, and POST to /quote/approvals of the unit who agreed and how.")],
        _ => [new(null, "Nothing was quoted.", "POST to /quote of the unit, then take the approval down.")],
    });
}
