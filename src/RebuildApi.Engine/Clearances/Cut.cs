using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Clearances;

/// <summary>One permitted cut: an operation done to the part in one position, in whole steps.</summary>
/// <param name="Operation">The operation.</param>
/// <param name="Position">The position of the part.</param>
public sealed record Cut(Operation Operation, string Position)
{
    /// <summary>What the cut is named by: <c>operation@position</c>.</summary>
    public string Id => $"{Operation.Id}@{Position}";

    /// <summary>The dimension that the operation is about: its first effect.</summary>
    public Effect Main => Operation.Effects[0];

    /// <summary>The cuts that a family permits, in its order: each operation that changes a dimension, at each position of its kind.</summary>
    /// <exception cref="ArgumentException">A step is not positive, or the bounds of a change are upside down.</exception>
    public static ImmutableArray<Cut> Of(FamilyIndex family) =>
    [
        .. from operation in family.Family.Operations
           where !operation.Effects.IsEmpty && operation.Effects.All(e => RequireStep(operation, e))
           from position in family.Family.Positions
           where position.Kind == operation.Kind && operation.Effects.All(e => e.At.IsOfKind || e.At.Position == position.Id)
           select new Cut(operation, position.Id),
    ];

    /// <summary>The change that one step makes to the dimension of an effect; negative where metal comes off.</summary>
    public static Length PerStep(Effect effect) => effect.MinChange < Length.Zero ? -effect.Step : effect.Step;

    /// <summary>How much the gap of a loop changes when the cut is made to so many steps; zero where the loop does not feel it.</summary>
    public Length ChangeOf(ClearanceLoop loop, int steps, FamilyIndex family) => Ratio.Sum(
        from term in loop.Terms
        where term.Of is OfPart
        from effect in Operation.Effects
        from factor in Dependence.Of(((OfPart)term.Of).At, new Address(Position, effect.At.Characteristic), family)
        select (checked(term.Numerator * factor.Numerator), checked(term.Denominator * factor.Denominator), steps * PerStep(effect)));

    /// <summary>Whether a loop feels the cut.</summary>
    public bool Touches(ClearanceLoop loop, FamilyIndex family) => ChangeOf(loop, 1, family) != Length.Zero || ChangeOf(loop, 1000, family) != Length.Zero;

    private static bool RequireStep(Operation operation, Effect effect)
    {
        if (effect.Step <= Length.Zero)
            throw new ArgumentException($"The step of {operation.Id} on {effect.At} is not positive.", nameof(effect));
        if (effect.MinChange > effect.MaxChange)
            throw new ArgumentException($"The changes of {operation.Id} on {effect.At} are upside down.", nameof(effect));
        return true;
    }
}
