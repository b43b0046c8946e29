using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;

namespace RebuildApi.Engine.Families;

/// <summary>Everything that is looked at when a family is taken up: whether it hangs together, and then whether its worked cases come out and prove its rules.</summary>
public static class LoadCheck
{
    /// <summary>Everything wrong or doubtful. The worked cases of a family with rules in code are left to whoever can run them.</summary>
    public static ImmutableArray<Diagnostic> Check(Family family)
    {
        var found = FamilyCheck.Check(family);
        if (found.Any(d => d.IsError) || !family.Hooks.IsEmpty)
            return found;
        return [.. found, .. GoldenCheck.Run(family, new NoHooks()), .. CaseCoverage.Check(family, new NoHooks())];
    }
}
