using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Pieces;
using RebuildApi.Engine.Selection;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Composition;

/// <summary>Turns a selection as it was sent into the engine's problem.</summary>
public sealed class SelectionIntake(SelectionCalculationRequest sent, Complaints complaints)
{
    // What one clearance can be made of; more would hold a whole machine for one answer.
    private const double MostCombinations = 1e6;
    private const int MostOptions = 500;

    // Sums are exact in 64 bits: 10 m, times the common multiple of denominators to 12, times coefficients to 12, times eight terms, times a hundred.
    private static readonly Length Longest = Length.Millimetres(10_000);

    /// <summary>The problem; null with complaints.</summary>
    public SelectionProblem? Read()
    {
        RequireDistinct(sent.Loops.Select(l => l.Id), "/loops");
        RequireDistinct(sent.Choices.Select(c => c.Id), "/choices");
        RequireShort();
        var choices = sent.Choices.Select((c, i) => Choice(c, Pointer.Entry("/choices", i))).ToImmutableArray();
        var loops = sent.Loops.Select((l, i) => Loop(l, Pointer.Entry("/loops", i))).ToImmutableArray();
        if (complaints.Any)
            return null;
        RequireFew(choices);
        return complaints.Any ? null : new SelectionProblem([.. loops.Select(l => l!)], [.. choices.Select(c => c!)], Stock());
    }

    private void RequireDistinct(IEnumerable<string> ids, string pointer)
    {
        foreach (var twice in ids.GroupBy(i => i, StringComparer.Ordinal).Where(g => g.Count() > 1))
            complaints.Add(pointer, FieldProblems.Contradiction, $"The id {twice.Key} is there twice.", twice.Key);
    }

    private void RequireShort()
    {
        var loops = sent.Loops.SelectMany((l, i) => new[]
        {
            ($"/loops/{i}/without", l.Without), ($"/loops/{i}/window/low", l.Window.Low), ($"/loops/{i}/window/high", l.Window.High),
        });
        var choices = sent.Choices.SelectMany((c, i) => (c.Members ?? []).Select((m, j) => ($"/choices/{i}/members/{j}/thickness", (SentQuantity?)m.Thickness))
            .Append(($"/choices/{i}/cut/most", c.Cut?.Most)));
        foreach (var (pointer, length) in loops.Concat(choices).Where(x => x.Item2 is { } l && (l.Length > Longest || l.Length < -Longest)))
            complaints.Add(pointer + "/value", FieldProblems.OutOfRange, "A length of at most 10 m makes sense here.", length!.Value.Text);
    }

    private SelectionChoice? Choice(SelectionChoiceRequest choice, string pointer)
    {
        if (choice.Members is null == choice.Cut is null)
        {
            complaints.Add(pointer, FieldProblems.Contradiction, "A choice has exactly one of members and cut.");
            return null;
        }

        if (choice.Members is { } members)
            RequireDistinct(members.Select(m => m.Id), pointer + "/members");
        if (complaints.Any)
            return null;
        var options = choice.Cut is { } cut ? Depths(cut) : OfMembers(choice, choice.Members!.Value);
        if (options.Length is > 0 and <= MostOptions)
            return new SelectionChoice(choice.Id, options);
        complaints.Add(pointer, FieldProblems.BadCount, $"There are {options.Length} ways to choose here; 1 to {MostOptions} make sense.");
        return null;
    }

    private static ImmutableArray<SelectionOption> Depths(CutRangeRequest cut)
    {
        var steps = (int)Math.Min(cut.Most.Length.Nanometres / cut.Step.Length.Nanometres, MostOptions + 1);
        return [.. Enumerable.Range(0, steps + 1).Select(n => new SelectionOption([], -(n * cut.Step.Length), null, n * cut.Step.Length))];
    }

    private ImmutableArray<SelectionOption> OfMembers(SelectionChoiceRequest choice, ImmutableArray<SelectionMemberRequest> members)
    {
        var series = new Series(
            choice.Id, choice.Id, [.. members.Select(m => new SeriesMember(m.Id, m.Thickness.Length))], Length.Zero, new Source(SourceKind.Judgement, "as sent"));
        var prices = members.Where(m => m.Cost is not null).ToDictionary(m => m.Id, m => (long)m.Cost!.Value, StringComparer.Ordinal);
        var packs = Stock() is { } stock ? Packs.All(series, choice.MaxPieces, stock, prices) : Packs.Of(series, choice.MaxPieces, null, prices);
        return [.. packs.Select(p => new SelectionOption(p.Members, p.Thickness, p.Cost))];
    }

    /// <summary>How many of each piece there are; none when no count was sent at all.</summary>
    private Dictionary<string, int>? Stock()
    {
        var members = sent.Choices.SelectMany(c => c.Members ?? []).ToArray();
        return members.All(m => m.Available is null)
            ? null
            : members.GroupBy(m => m.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Min(m => m.Available ?? int.MaxValue), StringComparer.Ordinal);
    }

    private SelectionLoop? Loop(SelectionLoopRequest loop, string pointer)
    {
        var known = sent.Choices.Select(c => c.Id).ToArray();
        foreach (var (term, i) in loop.Terms.Select((t, i) => (t, i)))
        {
            if (term.Numerator == 0)
                complaints.Add($"{pointer}/terms/{i}/numerator", FieldProblems.OutOfRange, "A coefficient of 0 is no member.", "0");
            if (!known.Contains(term.Choice, StringComparer.Ordinal))
                complaints.AddUnknown($"{pointer}/terms/{i}/choice", FieldProblems.NotAllowed, $"There is no choice {term.Choice} in this request.", term.Choice, known);
        }

        var u = Differences.Read(loop.StandardUncertainty, Dimension.Length, pointer + "/standardUncertainty", complaints) ?? 0;
        if (loop.Window.ToContract(pointer + "/window", complaints) is not { } window || complaints.Any)
            return null;
        var policy = Policy.Default with { Decision = sent.Rule, Probability = (double)sent.Probability };
        var guarded = GuardedWindow.Of(window, u, (double?)loop.DegreesOfFreedom, policy);
        return new SelectionLoop(
            loop.Id, loop.Without.Length, u, guarded.Low, guarded.High, WindowOf.Target(window),
            [.. loop.Terms.Select(t => new SelectionTerm(t.Choice, t.Numerator, t.Denominator))]);
    }

    private void RequireFew(ImmutableArray<SelectionChoice?> choices)
    {
        var sizes = choices.ToDictionary(c => c!.Id, c => c!.Options.Length, StringComparer.Ordinal);
        foreach (var (loop, i) in sent.Loops.Select((l, i) => (l, i)))
        {
            var combinations = loop.Terms.Select(t => t.Choice).Distinct().Aggregate(1.0, (n, c) => n * sizes[c]);
            if (combinations > MostCombinations)
                complaints.Add($"/loops/{i}/terms", FieldProblems.BadCount, FormattableString.Invariant($"The clearance has {combinations:0} combinations of its choices; at most {MostCombinations:0} are looked at."));
        }
    }
}
