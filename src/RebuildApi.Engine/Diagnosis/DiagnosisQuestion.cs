using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>What is known, and what it costs to be wrong.</summary>
/// <param name="Seen">The clues that are known, each once.</param>
public sealed record DiagnosisQuestion(ImmutableArray<ClueSeen> Seen)
{
    /// <summary>The first stage whose tests can still be tried: once a gearbox is apart, it can't be driven.</summary>
    public TestStage From { get; init; }

    /// <summary>What each cause costs, in minor units; causes left out cost nothing.</summary>
    public IReadOnlyDictionary<string, CauseCost> Costs { get; init; } = ImmutableDictionary<string, CauseCost>.Empty;

    /// <summary>
    /// What reading something is expected to save in the plan of the unit, in minor units, by characteristic (<c>position/characteristic</c>), clearance or
    /// attribute: the value of information that planning works out. It is added to what the reading saves in the diagnosis.
    /// </summary>
    public IReadOnlyDictionary<string, double> PlanSavings { get; init; } = ImmutableDictionary<string, double>.Empty;

    /// <summary>How many next checks are wanted.</summary>
    public int Checks { get; init; } = 10;
}

/// <summary>What it costs to be wrong about a cause, in minor units of one currency.</summary>
/// <param name="Repair">What putting it right costs: lost when it was not there.</param>
/// <param name="Missed">What leaving it costs when it was there: the comeback.</param>
public sealed record CauseCost(double Repair, double Missed)
{
    /// <summary>The loss to be expected when the cheaper of the two is chosen.</summary>
    /// <param name="probability">How likely the cause is there.</param>
    public double Expected(double probability) => Math.Min(Repair * (1 - probability), Missed * probability);
}
