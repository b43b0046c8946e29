using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;

namespace RebuildApi.Server.Wire;

/// <summary>A closed loop of dimensions as the family declares it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Group">The assembly it belongs to.</param>
/// <param name="Window">Where the gap must lie, ends included.</param>
/// <param name="Terms">Its members: gap = Σ coefficient × dimension.</param>
/// <param name="Trial">How it is read directly on the assembly.</param>
/// <param name="Criticality">What hangs on it.</param>
public sealed record ClearanceRuleWire(
    string Id, string Name, string Group, LimitsWire Window, ImmutableArray<TermWire> Terms, TrialMethod Trial, Criticality Criticality)
{
    /// <summary>From the contract.</summary>
    public static ClearanceRuleWire From(ClearanceLoop loop, Display show) => new(
        loop.Id, show.Words(loop.Name), loop.Group, LimitsWire.From(loop.Window, show)!, [.. loop.Terms.Select(t => TermWire.From(t, show))], loop.Trial, loop.Criticality);
}

/// <summary>One member of a clearance.</summary>
/// <param name="Coefficient">Signed; positive opens the gap, negative closes it: <c>-1</c>, <c>1/2</c>.</param>
/// <param name="Part">A characteristic of a part: <c>position/characteristic</c>.</param>
/// <param name="Series">A selective piece of this series.</param>
/// <param name="Position">Where the selective piece sits.</param>
/// <param name="MaxPieces">How many pieces may be stacked there.</param>
/// <param name="Fixed">A length that does not vary.</param>
public sealed record TermWire(string Coefficient, string? Part, string? Series, string? Position, int? MaxPieces, QuantityWire? Fixed)
{
    /// <summary>From the contract.</summary>
    public static TermWire From(Term term, Display show)
    {
        var sign = term.Numerator.ToString(CultureInfo.InvariantCulture);
        var coefficient = term.Denominator == 1 ? sign : sign + "/" + term.Denominator.ToString(CultureInfo.InvariantCulture);
        return term.Of switch
        {
            OfPart part => new(coefficient, part.At.ToString(), null, null, null, null),
            OfSeries series => new(coefficient, null, series.Series, series.Position, series.MaxPieces, null),
            Fixed length => new(coefficient, null, null, null, null, show.Length(length.Value)),
            _ => throw new InvalidOperationException("A term is a part, a series piece or a fixed length."),
        };
    }
}

/// <summary>The thicknesses in which a selective part exists.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Kind">The kind of part.</param>
/// <param name="Members">What exists, thinnest first.</param>
/// <param name="Tolerance">Half-width of the thickness tolerance of an unmeasured member.</param>
/// <param name="Source">Where the numbers come from.</param>
public sealed record SeriesWire(string Id, string Kind, ImmutableArray<SeriesMemberWire> Members, QuantityWire Tolerance, SourceWire Source)
{
    /// <summary>From the contract.</summary>
    public static SeriesWire From(Series series, Display show) => new(
        series.Id, series.Kind, [.. series.Members.Select(m => new SeriesMemberWire(m.Id, show.Length(m.Thickness)))], show.Length(series.Tolerance), SourceWire.From(series.Source));
}

/// <summary>One thickness that exists.</summary>
/// <param name="Id">What a person orders.</param>
/// <param name="Thickness">Nominal thickness.</param>
public sealed record SeriesMemberWire(string Id, QuantityWire Thickness);

/// <summary>A named piece of rework or assembly.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Kind">The kind of part it is done to.</param>
/// <param name="Minutes">Bench time.</param>
/// <param name="Cautions">What can hurt a person or the part.</param>
/// <param name="Mends">Damage classes that it removes.</param>
/// <param name="RemeasureGate">Characteristics to be read again before the part goes on.</param>
public sealed record OperationWire(
    string Id, string Name, string Kind, decimal Minutes, ImmutableArray<string> Cautions, ImmutableArray<string> Mends, ImmutableArray<string> RemeasureGate)
{
    /// <summary>From the contract.</summary>
    public static OperationWire From(Operation o, Display show) =>
        new(o.Id, show.Words(o.Name), o.Kind, o.Minutes, [.. o.Cautions.Select(show.Words)], o.Mends, o.RemeasureGate);
}

/// <summary>A relation that must hold between parts.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Template">The engine's template.</param>
/// <param name="Roles">Role to position, or position and feature.</param>
/// <param name="WhenBroken">The verdict when it does not hold.</param>
/// <param name="Severity">What it costs when it does not hold.</param>
/// <param name="Consequence">What then happens.</param>
/// <param name="Source">Where the rule comes from.</param>
public sealed record PairingRuleWire(
    string Id,
    string Name,
    string Template,
    IReadOnlyDictionary<string, string> Roles,
    Compatibility WhenBroken,
    Severity Severity,
    string Consequence,
    SourceWire Source)
{
    /// <summary>From the contract.</summary>
    public static PairingRuleWire From(PairingRule rule, Display show) => new(
        rule.Id, show.Words(rule.Name), rule.Template, rule.Roles, rule.WhenBroken, rule.Severity, show.Words(rule.Consequence), SourceWire.From(rule.Source));
}
