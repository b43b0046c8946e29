using System.Collections.Concurrent;
using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Diagnosis;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Diagnosis;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>Diagnoses under the priors that stand: as declared, or with the counts that a person accepted last.</summary>
public sealed class DiagnosisDesk(IStore store, Judging judging)
{
    // A network of each family and update in use; more than these are not looked at on one day.
    private const int Most = 32;
    private readonly ConcurrentDictionary<(string Declaration, string Update), CauseNetwork> _networks = new();

    /// <summary>The accepted updates of a family, oldest first.</summary>
    public async Task<ImmutableArray<PriorUpdate>> Updates(string family, CancellationToken cancellation) =>
        [.. (await store.All<PriorUpdate>(new ShopFilter(About: family), cancellation)).OrderBy(u => u.Number)];

    /// <summary>The network of a family under its last accepted update.</summary>
    public CauseNetwork Network(FamilyIndex family, PriorUpdate? update)
    {
        var key = (family.DeclarationSha256, update?.Id ?? "");
        if (_networks.TryGetValue(key, out var known))
            return known;
        if (_networks.Count >= Most)
            _networks.Clear();
        return _networks[key] = new CauseNetwork(family.Family, update is null ? null : Counted(family.Family, update.Units, update.Confirmed));
    }

    /// <summary>The priors of a family with counted units in them.</summary>
    public static ImmutableArray<CausePrior> Counted(Family family, int units, IReadOnlyDictionary<string, int> confirmed) =>
        [.. family.Causes.Select(c => CausePrior.Counted(c, units, confirmed.GetValueOrDefault(c.Id)))];

    /// <summary>Diagnoses what is only spoken of.</summary>
    public async Task<DiagnosisWire> Diagnose(
        UnitView view, IReadOnlyDictionary<string, Standing> standings, Func<ImmutableArray<ClueSeen>, DiagnosisQuestion> ask, Display show, CancellationToken cancellation)
    {
        var (network, number) = await Standing(view.Family, cancellation);
        return Answer(view, network, number, ask(ClueBook.Of(network, view, standings)), null, show);
    }

    /// <summary>Diagnoses a unit of the shop by everything that is recorded of it.</summary>
    public async Task<DiagnosisWire> Diagnose(UnitFile file, int checks, Display show, CancellationToken cancellation)
    {
        var judged = judging.Judge(file);
        var tests = await store.All<TestDone>(new ShopFilter(file.Unit.Id), cancellation);
        var view = new UnitView(judged.View.Snapshot with { Tests = [.. tests.Select(t => t.Seen)] }, judged.Family);
        var standings = Standings.Of(judged.Answers.Parts.SelectMany(p => p.Verdicts).Concat(judged.Answers.Clearances.Select(c => c.Verdict)));
        var (network, number) = await Standing(view.Family, cancellation);
        var question = new DiagnosisQuestion(ClueBook.Of(network, view, standings)) { From = StageOf(file.Unit.Stage), Checks = checks };
        return Answer(view, network, number, question, file, show);
    }

    private async Task<(CauseNetwork Network, int Number)> Standing(FamilyIndex family, CancellationToken cancellation)
    {
        var update = (await Updates(family.Family.Version.Id, cancellation)).LastOrDefault();
        return (Network(family, update), update?.Number ?? 0);
    }

    // Whole before it is stripped and again once it is together.
    private static TestStage StageOf(string stage) => UnitStages.IsWhole(stage) ? TestStage.BeforeStripDown : TestStage.Teardown;

    private static DiagnosisWire Answer(UnitView view, CauseNetwork network, int number, DiagnosisQuestion question, UnitFile? file, Display show)
    {
        var answer = Ask(network, question);
        return new DiagnosisWire(
            file?.Unit.Id,
            file?.Unit.Version,
            [.. answer.Causes.Select(c => CauseWire.From(c, show))],
            [.. answer.Seen.Select(s => EvidenceWire.From(s, network))],
            [.. answer.Unexplained.Select(u => new UnexplainedWire(u.Clue.Id, u.Clue.Name, LikelihoodWire.Round(u.Probability)))],
            [.. answer.Checks.Select(c => CheckWire.From(c, network))],
            number,
            [.. answer.Reasons.Select(r => ReasonWire.From(r, view.Family))],
            RuleWire.From(view.Family.IdentityOf("diagnosis")),
            view.InputsSha256,
            Cautions.Of(view.Family, show));
    }

    private static DiagnosisAnswer Ask(CauseNetwork network, DiagnosisQuestion question)
    {
        try
        {
            return Diagnoser.Diagnose(network, question);
        }
        catch (TooWideException e)
        {
            throw new ProblemException(Problems.NotComputable, e.Message);
        }
    }
}
