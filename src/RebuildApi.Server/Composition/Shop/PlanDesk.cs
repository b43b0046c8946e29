using System.Collections.Immutable;
using System.Text.Json;
using Microsoft.Extensions.Options;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Planning;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Snapshots;
using RebuildApi.PluginHost;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Json;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Works plans out from a unit as it stands, the price list and the shelf. That takes too long for the one writer, so it is done before anything is written.</summary>
public sealed class PlanDesk(Bench bench, Judging judging, IPluginCatalog catalog, IOptions<ServerOptions> options)
{
    // A search that has not ended by then is answered with what it found and how far that may be from the best.
    private readonly TimeSpan _longest = TimeSpan.FromSeconds(options.Value.PlanSeconds);

    /// <summary>Works one plan out.</summary>
    public async Task<KeptPlan> Plan(string unit, PlanAskRequest sent, CancellationToken cancellation)
    {
        var (view, offers) = await Look(unit, cancellation);
        var request = RequestOf(sent, view.Family, offers);
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(_longest);
        var answer = Asked(() => UnitPlanner.Plan(new EstimateBook(view), request, new CatalogHooks(catalog, view.Family), null, limit.Token));
        cancellation.ThrowIfCancellationRequested();
        var (id, now, show) = (bench.Ids.Next(), bench.Time.GetUtcNow(), Display.For("mm"));
        var sheet = new PlanSheet(view.Family, offers.Rates, show).Of(answer, Kebab.Of(sent.Objective), id, unit, sent.Person, now, view.InputsSha256, offers.Sha256);
        return new KeptPlan(
            id, unit, sheet.Objective, sent.Person, now, view.InputsSha256, offers.Sha256, JsonSerializer.Serialize(sheet, WireJson.Options),
            answer.Plan is { } plan ? new PlanNeeds(offers, view.Family, show).Of(plan) : [], answer.Plan?.ReadyInDays ?? 0)
        {
            Snapshot = answer.Plan is { } planned ? JsonSerializer.Serialize(planned.Snapshot, ContractJson.Default.UnitSnapshot) : null,
        };
    }

    /// <summary>Plans between the cheapest and the surest; nothing is kept.</summary>
    public async Task<TradeOffWire> TradeOff(string unit, int most, CancellationToken cancellation)
    {
        var (view, offers) = await Look(unit, cancellation);
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(_longest);
        var request = RequestOf(new PlanAskRequest(""), view.Family, offers);
        var front = Asked(() => UnitPlanner.Front(new EstimateBook(view), request, new CatalogHooks(catalog, view.Family), most, null, limit.Token));
        cancellation.ThrowIfCancellationRequested();
        var sheet = new PlanSheet(view.Family, offers.Rates, Display.For("mm"));
        return new([.. front.Select((p, i) => PlanRowWire.From(
            sheet.Of(new PlanAnswer(p.Gap == 0 ? SolveStatus.Proven : SolveStatus.Bounded, p, [], [], [], []), "trade-off", FormattableString.Invariant($"{i + 1}"), unit, "",
                bench.Time.GetUtcNow(), view.InputsSha256, offers.Sha256), false))]);
    }

    /// <summary>Whether the unit, the prices and the shelf are still what a plan was made from.</summary>
    public async Task<bool> StillStands(KeptPlan plan, CancellationToken cancellation)
    {
        var (view, offers) = await Look(plan.Unit, cancellation);
        return view.InputsSha256 == plan.InputsSha256 && offers.Sha256 == plan.OffersSha256;
    }

    /// <summary>A plan as it was answered.</summary>
    public static PlanWire Read(KeptPlan plan) => JsonSerializer.Deserialize<PlanWire>(plan.Body, WireJson.Options)!;

    private async Task<(UnitView View, Offers Offers)> Look(string unit, CancellationToken cancellation)
    {
        var view = judging.View(await bench.File(unit, cancellation));
        return (view, await Offers.Of(bench.Store, view.Family, unit, bench.Time.GetUtcNow(), cancellation));
    }

    private static T Asked<T>(Func<T> plan)
    {
        try
        {
            return plan();
        }
        catch (ArgumentException refused)
        {
            throw new ProblemException(Problems.NotComputable, refused.Message.Split(" (Parameter", StringSplitOptions.None)[0]);
        }
    }

    private static PlanRequest RequestOf(PlanAskRequest sent, FamilyIndex family, Offers offers)
    {
        var complaints = new Complaints();
        var named = (sent.KeepOriginal ?? []).Select((p, i) => (Id: p, At: $"/keepOriginal/{i}")).Concat((sent.Fixed?.Keys ?? []).Select(p => (Id: p, At: Pointer.Member("/fixed", p))));
        foreach (var (id, at) in named.Where(n => !family.Positions.ContainsKey(n.Id)))
            complaints.AddUnknown(at, FieldProblems.UnknownPosition, $"The family has no position {id}.", id, family.Positions.Keys);
        var cost = sent.MostCost is { } most ? offers.Rates.Amount(most, "/mostCost", complaints) : (long?)null;
        var spoken = new SpokenOffers(family, offers.Rates, complaints).Of(sent.Candidates ?? []);
        var negligible = sent.NegligibleRisk is { } risk ? offers.Rates.Amount(risk, "/negligibleRisk", complaints) : (long?)null;
        complaints.ThrowIfAny(Problems.InvalidContent);
        return new PlanRequest
        {
            Candidates = [.. offers.Candidates, .. spoken],
            Money = offers.Rates.Rules(),
            Pieces = offers.Pieces,
            Objective = sent.Objective,
            Cuts = sent.Cuts,
            Rates = new PlanRates { LabourPerHour = offers.Rates.LabourPerHour, ComebackCost = offers.Rates.ComebackCost, NegligibleRisk = negligible },
            Limits = new PlanLimits
            {
                MostCost = cost,
                MostDays = sent.MostDays,
                KeepOriginal = [.. sent.KeepOriginal ?? []],
                Fixed = (sent.Fixed ?? ImmutableSortedDictionary<string, string>.Empty).ToImmutableDictionary(f => f.Key, f => f.Value, StringComparer.Ordinal),
                Without = [.. sent.Without ?? []],
                AcceptOpen = sent.AcceptOpen,
                AcceptConditional = sent.AcceptConditional,
            },
        };
    }
}
