using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Statistics;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Calculations;
using RebuildApi.Server.Wire.History;
using RebuildApi.Storage;
using LimitSide = RebuildApi.Engine.Statistics.LimitSide;

namespace RebuildApi.Server.Endpoints;

/// <summary>What the shop's own records say: what rests on an instrument, how benches agree, how worn parts come in.</summary>
public static class HistoryEndpoints
{
    private static readonly QueryOption Part = new("part", "Id of the reference part that the benches share.", Required: true);
    private static readonly QueryOption OfWhat = new("characteristic", "What is read of it; a length.", Required: true);
    private static readonly QueryOption Reference = new("reference", "Its value with its unit, as 30.002mm; the mean of the other benches when not said.");
    private static readonly QueryOption Comebacks = new("comebacks", "How many came back, where the shop counts for itself.", "integer");
    private static readonly QueryOption Of = new("of", "Of how many.", "integer");
    private static readonly QueryOption OfFamily = new("family", "Only units of this family, counted from the records.");
    private static readonly QueryOption Acceptable = new("acceptable", "The comeback rate that the shop accepts, in percent, a whole number; 2 when not said.", "integer");

    /// <summary>The routes.</summary>
    public static void MapHistory(this IEndpointRouteBuilder routes)
    {
        routes.Resource("instruments").Read("/instruments/{instrument}/recall", RecallOf, "recallInstrument", "What rests on an instrument?",
                "Everything that was read with the instrument since a moment, on parts and on trial assemblies, and each answer that would change without it. Without a moment: since it was last found right before a calibration found it wrong.")
            .InUnits().WithMetadata(Since.Optional, Since.Until).Fails(Problems.UnknownInstrumentId, Problems.NotComputable);
        var stations = routes.Resource("stations");
        stations.List<ListOf<StationWire>>("/stations", Stations, "listStations", "List the benches", "The benches that readings were taken at, with what was used there.");
        stations.Read("/stations/{station}/bias", Bias, "getStationBias", "Does a bench drift?",
                "Its readings of a part that all benches read, followed by a weighted average with an alarm.")
            .InUnits().WithMetadata(Part, OfWhat, Reference).Fails(Problems.UnknownStation, Problems.NotComputable);
        var statistics = routes.Resource("statistics");
        statistics.Read("/statistics/wear", Wear, "getWear", "How worn do parts come in?", "Count, mean, spread, quantiles, and the share beyond the service limits, of parts that were found in units.")
            .InUnits().WithMetadata([.. WornParts.Options]).Fails(Problems.NotComputable);
        statistics.Read("/statistics/control-chart", Chart, "getControlChart", "A chart over the units of the shop", "Single values of parts that were found in units, in the order in which the units were taken in.")
            .InUnits().WithMetadata([.. WornParts.Options]).Fails(Problems.NotComputable);
        statistics.Read("/statistics/comeback-rate", Rate, "getComebackRate", "A comeback rate with its honest interval", "The share of the units handed over that came back, counted from the records, with its exact interval of 95 %; or that of counts that are sent.")
            .WithMetadata(Comebacks, Of, OfFamily).Fails(Problems.NotComputable);
        statistics.Read("/statistics/limit-proposals", Proposals, "getLimitProposals", "Should a limit be tighter or looser?",
                "What the parts that went out and those that came back speak for, with the counts behind it. Never applied by itself: a person signs a policy, or does not.")
            .InUnits().WithMetadata([.. WornParts.Options, Acceptable]).Fails(Problems.NotComputable);
    }

    private static async Task<Found<RecallWire>> RecallOf(string instrument, HttpContext http, Asked asked, InstrumentRecall recall, CancellationToken cancellation) =>
        new(await recall.Of(instrument, Since.Maybe(http, Since.Optional.Name), Since.Maybe(http, Since.Until.Name), asked.Show, cancellation));

    private static async Task<Listing<StationWire, ListOf<StationWire>>> Stations(StationHistory stations, CancellationToken cancellation) =>
        new(PagesOf.Whole(await stations.All(cancellation), s => s.Id), (items, next, asOf) => new(items, next, asOf));

    private static async Task<Found<StationBiasWire>> Bias(string station, HttpContext http, Asked asked, StationHistory stations, CancellationToken cancellation) =>
        new(await stations.Bias(station, Needed(http, Part), Needed(http, OfWhat), QueryNumber.Length(http, Reference.Name), asked.Show, cancellation));

    private static async Task<Found<WearWire>> Wear(HttpContext http, Asked asked, WornParts parts, CancellationToken cancellation)
    {
        var (family, kind, characteristic) = parts.Asked(http);
        var values = await parts.Read(family, kind, characteristic, cancellation);
        if (values.IsEmpty)
            throw TooFew("No part of this kind that was found in a unit was read yet.");
        var wear = WearDistribution.Of([.. values.Select(v => v.Value)], characteristic.Service?.Low?.InSi, characteristic.Service?.High?.InSi);
        return new(WearWire.From(family.Family.Version.Id, kind, characteristic, wear, asked.Show));
    }

    private static async Task<Found<HistoryChartWire>> Chart(HttpContext http, Asked asked, WornParts parts, CancellationToken cancellation)
    {
        var (family, kind, characteristic) = parts.Asked(http);
        var read = await parts.Read(family, kind, characteristic, cancellation);
        if (read.Length < 2)
            throw TooFew("A chart needs at least two parts of this kind that were found in units and read.");
        var values = read.Select(r => r.Value).ToImmutableArray();
        return new(new HistoryChartWire(
            family.Family.Version.Id, kind, characteristic.Id, [.. read.Select(r => r.Unit)], [.. values.Select(v => asked.Show.Si(v, characteristic.Dimension))],
            ControlChartWire.From(ControlChart.Individuals(values), values, characteristic.Dimension, asked.Show)));
    }

    private static async Task<Found<ComebackRateWire>> Rate(HttpContext http, ComebackHistory comebacks, CancellationToken cancellation)
    {
        var family = QueryText.Of(http, OfFamily.Name);
        if (QueryText.Of(http, Comebacks.Name) is null && QueryText.Of(http, Of.Name) is null)
            return new(await comebacks.Rate(family, cancellation));
        if (family is not null)
            throw QueryText.Wrong(OfFamily.Name, FieldProblems.Contradiction, "Counts that are sent are of no family.", family);
        var of = QueryNumber.Whole(http, Of.Name, 1, 1_000_000);
        return new(ComebackRateWire.From(Share.Counted(QueryNumber.Whole(http, Comebacks.Name, 0, of), of), false, [], []));
    }

    private static async Task<Found<LimitProposalsWire>> Proposals(HttpContext http, Asked asked, WornParts parts, ComebackHistory comebacks, CancellationToken cancellation)
    {
        var (family, kind, characteristic) = parts.Asked(http);
        var acceptable = QueryText.Of(http, Acceptable.Name) is null ? 2 : QueryNumber.Whole(http, Acceptable.Name, 1, 99);
        var history = await comebacks.Of(family, kind, characteristic, cancellation);
        if (history.IsEmpty)
            throw TooFew("No part of this kind that was read has gone out yet.");
        return new(new LimitProposalsWire(
            family.Family.Version.Id, kind, characteristic.Id, history.Length, history.Count(h => h.CameBack), LimitsWire.From(characteristic.Service, asked.Show),
            acceptable / 100.0, [.. SpokenFor(history, characteristic, acceptable / 100.0, asked.Show)], false,
            "Fisher's exact test with Bonferroni's correction; Clopper and Pearson, Biometrika 26, 1934", Cautions.Standing));
    }

    private static IEnumerable<LimitProposalWire> SpokenFor(ImmutableArray<ServiceHistory> history, Characteristic characteristic, double acceptable, Display show)
    {
        foreach (var (side, present) in new[] { (LimitSide.Low, characteristic.Service?.Low), (LimitSide.High, characteristic.Service?.High) })
        {
            if (present is null)
                continue;
            if (LimitProposal.Tighter(history, side) is { } tighter)
                yield return LimitProposalWire.From(side, "tighter", tighter, characteristic.Dimension, show);
            if (LimitProposal.Looser(history, side, present.InSi, acceptable) is { } looser)
                yield return LimitProposalWire.From(side, "looser", looser, characteristic.Dimension, show);
        }
    }

    private static string Needed(HttpContext http, QueryOption option) =>
        QueryText.Of(http, option.Name) ?? throw QueryText.Wrong(option.Name, FieldProblems.MissingField, "The parameter is missing.", null);

    private static ProblemException TooFew(string words) =>
        new(Problems.NotComputable, words, [new FieldError("query/characteristic", FieldProblems.BadCount.Code, words)]);
}
