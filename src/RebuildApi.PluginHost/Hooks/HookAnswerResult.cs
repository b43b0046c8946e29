using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost;

/// <summary>What came of running a rule in code.</summary>
/// <param name="Verdicts">
/// The verdicts that were accepted. Their rule identity names family, plug-in hash, contract and rule; declaration hash, engine version and inputs
/// hash are empty until the engine stamps them. Nothing that the plug-in said of them is kept.
/// </param>
/// <param name="Dropped">
/// What was not accepted, and why: <c>hook-not-available</c>, <c>hook-suspended</c>, <c>hook-threw</c>, <c>hook-late</c>, <c>hook-crashed</c>,
/// <c>hook-answer-invalid</c>, <c>hook-outside-scope</c>. What a dropped answer was about is not assessed.
/// </param>
public sealed record HookAnswerResult(ImmutableArray<PairingVerdict> Verdicts, ImmutableArray<Reason> Dropped)
{
    /// <summary>Nothing was accepted.</summary>
    internal static HookAnswerResult None(Reason why) => new([], [why]);
}
