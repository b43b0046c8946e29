using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Judging;

/// <summary>Is one part good? The worst of its verdicts decides.</summary>
/// <param name="Position">Where it sits.</param>
/// <param name="Index">Which of several like parts.</param>
/// <param name="Component">The part, or none when no part is recorded there.</param>
/// <param name="Outcome">The worst of its verdicts.</param>
/// <param name="Disposition">Reuse, rework or replace; undecided while something is open.</param>
/// <param name="Condition">What looking at it says.</param>
/// <param name="Verdicts">What its readings say.</param>
/// <param name="Operations">The family's operations that would mend it.</param>
/// <param name="Advice">What else to look for.</param>
public sealed record PartAnswer(
    string Position,
    int Index,
    Component? Component,
    Outcome Outcome,
    Disposition Disposition,
    Verdict Condition,
    ImmutableArray<Verdict> Verdicts,
    ImmutableArray<Operation> Operations,
    ImmutableArray<Text> Advice);
