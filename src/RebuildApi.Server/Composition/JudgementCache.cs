using System.Collections.Concurrent;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Server.Composition;

/// <summary>
/// Keeps the latest judgements by what they were made from and whose rules made them, so that the three answers about a unit are worked out once.
/// Families with rules in code are left out: such a rule may be suspended now and answer later.
/// </summary>
public sealed class JudgementCache
{
    // A shop works on a few dozen units at a time; a judgement of a whole gearbox is some hundred kilobytes.
    private const int Most = 64;
    private readonly ConcurrentDictionary<(string Inputs, string Declaration, string? Plugin), Judgement> _kept = new();

    /// <summary>The judgement of a view, made when it is not at hand.</summary>
    public Judgement Of(UnitView view, Func<UnitView, Judgement> judge)
    {
        if (!view.Family.Family.Hooks.IsEmpty)
            return judge(view);
        var key = (view.InputsSha256, view.Family.DeclarationSha256, view.Family.Plugin?.Sha256);
        if (_kept.TryGetValue(key, out var known))
            return known;
        if (_kept.Count >= Most)
            _kept.Clear();
        return _kept[key] = judge(view);
    }
}
