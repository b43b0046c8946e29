using System.Collections.Immutable;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Stages;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>Shows where a unit is, how it came there, and what its next gate asks for.</summary>
public sealed class StageSheet(Bench bench, Judging judging)
{
    /// <summary>The whole way of a unit.</summary>
    public async ValueTask<StagesWire> Of(string unit, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        var passings = await bench.Store.All<StagePassing>(new ShopFilter(unit), cancellation);
        var whyNot = judging.WhyNot(file);
        return new StagesWire(
            unit, file.Unit.Stage, file.Unit.Version, [.. UnitStages.Way.Select(s => Stage(s, file.Unit.Stage, passings))],
            whyNot is null ? await Next(file, cancellation) : null, whyNot, StageDesk.Open(file.Unit.Stage),
            [.. passings.SelectMany(LeftOut)], [.. passings.Select(PassingWire.Of)], Cautions.Standing);
    }

    /// <summary>The next gate of a unit, held against it; null when none leads on.</summary>
    public async ValueTask<GateWire?> Next(UnitFile file, CancellationToken cancellation)
    {
        if (UnitStages.After(file.Unit.Stage) is not { } to)
            return null;
        var held = Gates.Hold(await GateFacts.Of(bench.Store, judging.Judge(file), cancellation));
        return new GateWire(to, held.All(h => h.IsMet), [.. held.Select(Requirement)]);
    }

    private static RequirementWire Requirement(Held held) => new(
        held.Of.Id, held.Of.Name, held.IsMet, Kebab.Of(held.Of.Leave), !held.IsMet && held.MayLeave,
        [.. held.Unmet.Select(u => new UnmetWire(u.Subject, u.Words, u.Fix, u.IsSafety))], held.Of.Reason);

    private static StageWire Stage(string stage, string here, ImmutableArray<StagePassing> passings)
    {
        var left = UnitStages.IsBefore(stage, here) ? passings.LastOrDefault(p => p.From == stage && UnitStages.IsBefore(stage, p.To)) : null;
        return new(stage, stage == here ? "here" : UnitStages.IsBefore(stage, here) ? "passed" : "ahead", left?.Time, left?.Person);
    }

    private static IEnumerable<LeftOutWire> LeftOut(StagePassing passing) => passing.Gate
        .Where(g => g.State != "met").Select(g => new LeftOutWire(g.Requirement, g.State, g.Reason, g.Person, passing.To, passing.Time, g.Left));
}
