using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;
using RebuildApi.PluginHost;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>A unit with the answers about it.</summary>
/// <param name="File">What is stored.</param>
/// <param name="View">The unit through its family.</param>
/// <param name="Answers">All answers.</param>
public sealed record Judged(UnitFile File, UnitView View, Engine.Judging.Judgement Answers)
{
    /// <summary>The family.</summary>
    public FamilyIndex Family => View.Family;
}

/// <summary>Judges units as they stand.</summary>
public sealed class Judging(IPluginCatalog catalog, FamilyBook families, JudgementCache cache)
{
    /// <summary>Judges a unit under the edition of the rules that it is pinned to.</summary>
    /// <exception cref="Errors.ProblemException">That edition is not loaded.</exception>
    public Judged Judge(UnitFile file)
    {
        var view = View(file);
        return new Judged(file, view, cache.Of(view, v => UnitJudge.Judge(v, new CatalogHooks(catalog, v.Family))));
    }

    /// <summary>Looks at a unit through the edition of the rules that it is pinned to.</summary>
    /// <exception cref="Errors.ProblemException">That edition is not loaded.</exception>
    public UnitView View(UnitFile file) => new(UnitSnapshots.Of(file), families.RequirePinned(file.Unit.Family));

    /// <summary>Why a unit can't be judged now; null when it can.</summary>
    public string? WhyNot(UnitFile file)
    {
        _ = families.Pinned(file.Unit.Family, out var whyNot);
        return whyNot;
    }
}
