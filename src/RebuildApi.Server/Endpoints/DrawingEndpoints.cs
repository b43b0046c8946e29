using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Statistics;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Pages;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>Answers as drawings, each as lines (SVG) and as dots (PNG), for use in any document.</summary>
public static class DrawingEndpoints
{
    private static readonly (string Suffix, string Type)[] Forms = [("svg", Drawn.Lines), ("png", Drawn.Dots)];
    private static readonly QueryOption Plan = new("plan", "The plan; the one that was chosen, or else the newest, when none is named.");

    /// <summary>The routes.</summary>
    public static void MapDrawings(this IEndpointRouteBuilder routes)
    {
        var (answers, plans, statistics) = (routes.Resource("answers"), routes.Resource("plans"), routes.Resource("statistics"));
        foreach (var (suffix, type) in Forms)
        {
            var (png, words) = suffix == "png" ? ("Png", " (.png)") : ("", "");
            answers.Read($"/units/{{unit}}/clearances/{{clearance}}.{suffix}", Clearance(type), "drawClearance" + png, "Draw a clearance" + words,
                    "What opens the gap and what fills it, to one scale; the gap with its window, value and uncertainty to its own; the ring or cut that brings it right.")
                .Fails(Problems.UnknownUnit, Problems.RulesUnavailable, Problems.NotFound).Produces<string>(200, type);
            plans.Read($"/units/{{unit}}/plan.{suffix}", PlanOf(type), "drawPlan" + png, "Draw a plan" + words,
                    "A strip for each shaft: which parts stay, which are worked on, which are replaced and by what, at what price.")
                .WithMetadata(Plan).Fails(Problems.UnknownUnit, Problems.UnknownPlan, Problems.RulesUnavailable).Produces<string>(200, type);
            statistics.Read("/statistics/control-chart." + suffix, Chart(type), "drawControlChart" + png, "Draw a chart over the units of the shop" + words, "The control chart as a drawing.")
                .WithMetadata([.. WornParts.Options]).Fails(Problems.NotComputable).Produces<string>(200, type);
            statistics.Read("/statistics/wear." + suffix, Wear(type), "drawWear" + png, "Draw how worn parts come in" + words, "A histogram with the service limits.")
                .WithMetadata([.. WornParts.Options]).Fails(Problems.NotComputable).Produces<string>(200, type);
        }
    }

    private static Delegate Clearance(string form) => async (string unit, string clearance, Bench bench, Judging judging, PageWords words, CancellationToken cancellation) =>
    {
        var judged = judging.Judge(await bench.File(unit, cancellation));
        var answer = judged.Answers.Clearances.FirstOrDefault(c => c.Verdict.Subject == clearance)
            ?? throw new ProblemException(Problems.NotFound, "The family has no clearance of this id.");
        return new StackDrawing(answer, judged.Family, words, isAlone: true).Draw().As(form);
    };

    private static Delegate PlanOf(string form) => async (string unit, HttpContext http, Bench bench, Judging judging, IStore store, PageWords words, CancellationToken cancellation) =>
    {
        var family = judging.View(await bench.File(unit, cancellation)).Family;
        var plan = await UnitPlan.Of(store, unit, QueryText.Of(http, Plan.Name), cancellation) ?? throw new ProblemException(Problems.UnknownPlan, "The unit has no such plan.");
        return new PlanDrawing(plan.Answer, family, new Sums(await store.Rates(cancellation)).Of, words).Draw().As(form);
    };

    private static Delegate Chart(string form) => async (HttpContext http, WornParts parts, PageWords words, CancellationToken cancellation) =>
    {
        var (characteristic, title, values) = await Read(http, parts, "draw.chart", 2, words, cancellation);
        return new ChartDrawing(title, values, ControlChart.Individuals(values), characteristic.Dimension, words).Draw().As(form);
    };

    private static Delegate Wear(string form) => async (HttpContext http, WornParts parts, PageWords words, CancellationToken cancellation) =>
    {
        var (characteristic, title, values) = await Read(http, parts, "draw.wear", 1, words, cancellation);
        return new WearDrawing(title, values, characteristic.Service, characteristic.Dimension, words).Draw().As(form);
    };

    private static async Task<(Characteristic Characteristic, string Title, ImmutableArray<double> Values)> Read(
        HttpContext http, WornParts parts, string title, int fewest, PageWords words, CancellationToken cancellation)
    {
        var (family, kind, characteristic) = parts.Asked(http);
        var values = (await parts.Read(family, kind, characteristic, cancellation)).Select(v => v.Value).ToImmutableArray();
        if (values.Length < fewest)
            throw TooFew("Too few parts of this kind that were found in units were read yet.");
        var count = values.Length.ToString(CultureInfo.InvariantCulture);
        return (characteristic, $"{characteristic.Name.In(words.Language)} · {kind} · {words[title, ("count", count)]}", values);
    }

    private static ProblemException TooFew(string words) =>
        new(Problems.NotComputable, words, [new FieldError("query/characteristic", FieldProblems.BadCount.Code, words)]);
}
