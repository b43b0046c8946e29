using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Statistics;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Pages;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Endpoints;

/// <summary>Answers as drawings, for use in any document.</summary>
public static class DrawingEndpoints
{
    private const string Type = "image/svg+xml";

    /// <summary>The routes.</summary>
    public static void MapDrawings(this IEndpointRouteBuilder routes)
    {
        routes.Resource("answers").Read("/units/{unit}/clearances/{clearance}.svg", Clearance, "drawClearance", "Draw a clearance",
                "What opens the gap and what fills it, to one scale; the gap with its window, value and uncertainty to its own.")
            .Fails(Problems.UnknownUnit, Problems.RulesUnavailable, Problems.NotFound).Produces<string>(200, Type);
        var statistics = routes.Resource("statistics");
        statistics.Read("/statistics/control-chart.svg", Chart, "drawControlChart", "Draw a chart over the units of the shop", "The control chart as a drawing.")
            .WithMetadata([.. WornParts.Options]).Fails(Problems.NotComputable).Produces<string>(200, Type);
        statistics.Read("/statistics/wear.svg", Wear, "drawWear", "Draw how worn parts come in", "A histogram with the service limits.")
            .WithMetadata([.. WornParts.Options]).Fails(Problems.NotComputable).Produces<string>(200, Type);
    }

    private static async Task<IResult> Clearance(string unit, string clearance, Bench bench, Judging judging, CancellationToken cancellation)
    {
        var judged = judging.Judge(await bench.File(unit, cancellation));
        var answer = judged.Answers.Clearances.FirstOrDefault(c => c.Verdict.Subject == clearance)
            ?? throw new ProblemException(Problems.NotFound, "The family has no clearance of this id.");
        return new StackDrawing(answer, judged.Family, PageWords.English).Draw().AsAnswer();
    }

    private static async Task<IResult> Chart(HttpContext http, WornParts parts, CancellationToken cancellation)
    {
        var (characteristic, title, values) = await Read(http, parts, "draw.chart", 2, cancellation);
        return new ChartDrawing(title, values, ControlChart.Individuals(values), characteristic.Dimension, PageWords.English).Draw().AsAnswer();
    }

    private static async Task<IResult> Wear(HttpContext http, WornParts parts, CancellationToken cancellation)
    {
        var (characteristic, title, values) = await Read(http, parts, "draw.wear", 1, cancellation);
        return new WearDrawing(title, values, characteristic.Service, characteristic.Dimension, PageWords.English).Draw().AsAnswer();
    }

    private static async Task<(Characteristic Characteristic, string Title, ImmutableArray<double> Values)> Read(
        HttpContext http, WornParts parts, string title, int fewest, CancellationToken cancellation)
    {
        var (family, kind, characteristic) = parts.Asked(http);
        var values = (await parts.Read(family, kind, characteristic, cancellation)).Select(v => v.Value).ToImmutableArray();
        if (values.Length < fewest)
            throw TooFew("Too few parts of this kind that were found in units were read yet.");
        var count = values.Length.ToString(CultureInfo.InvariantCulture);
        return (characteristic, $"{characteristic.Name.In("en")} · {kind} · {PageWords.English[title, ("count", count)]}", values);
    }

    private static ProblemException TooFew(string words) =>
        new(Problems.NotComputable, words, [new FieldError("query/characteristic", FieldProblems.BadCount.Code, words)]);
}
