using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>The result of one calculation with what it rests on. Nothing is stored.</summary>
/// <param name="Understood">The request as it was read, with what was left out filled in.</param>
/// <param name="Result">The result.</param>
/// <param name="Formula">What was computed and where it comes from.</param>
/// <param name="Reasons">Why, where an outcome was reached.</param>
/// <param name="Engine">Version of the arithmetic.</param>
/// <param name="Cautions">What stands before the result.</param>
/// <typeparam name="TSent">What was asked.</typeparam>
/// <typeparam name="T">What was computed.</typeparam>
public sealed record CalculationWire<TSent, T>(
    TSent Understood, T Result, FormulaWire Formula, ImmutableArray<ReasonWire> Reasons, string Engine, ImmutableArray<string> Cautions)
{
    /// <summary>A result with the standing cautions and those of the formula.</summary>
    public static CalculationWire<TSent, T> Of(TSent sent, Formula formula, Worked<T> worked) => new(
        sent,
        worked.Result,
        new FormulaWire(formula.Name, formula.Expression, formula.Source),
        [.. worked.Reasons.Select(ReasonWire.From)],
        RebuildApi.Engine.Identity.EngineVersion.Current,
        [.. Wire.Cautions.Standing, .. formula.Cautions]);
}

/// <summary>What was computed.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Expression">The formula.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record FormulaWire(string Name, string Expression, string Source);

/// <summary>A formula with where it comes from and what is to be minded.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Expression">The formula.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Cautions">What is to be minded beside it.</param>
public sealed record Formula(string Name, string Expression, string Source, params ImmutableArray<string> Cautions);

/// <summary>A result with why.</summary>
/// <param name="Result">The result.</param>
/// <param name="Reasons">Why.</param>
/// <typeparam name="T">What was computed.</typeparam>
public sealed record Worked<T>(T Result, params ImmutableArray<Reason> Reasons);
