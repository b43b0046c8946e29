using System.Collections.Frozen;
using System.Globalization;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Pages;

/// <summary>A page for every problem code: what it means, why it happens, what to do.</summary>
public static class ProblemPages
{
    private static readonly FrozenDictionary<string, Problem> Catalogue =
        Problems.All.Concat(FieldProblems.All).ToFrozenDictionary(p => p.Code, StringComparer.Ordinal);

    /// <summary>Serves the pages. They are for people, so they stand outside the document.</summary>
    public static void MapProblemPages(this IEndpointRouteBuilder routes)
    {
        routes.MapOpenPage("/problems", All, Why);
        routes.MapOpenPage("/problems/{code}", One, Why);
    }

    private const string Why = "they explain what any error means, and say nothing of the shop";

    private static IResult All(PageWords w) => new Frame(w, w["problems.title"], "",
        Table(w["problems.whole"], Problems.All, w) + Table(w["problems.fields"], FieldProblems.All, w));

    private static IResult One(string code, PageWords w)
    {
        if (!Catalogue.TryGetValue(code, out var problem))
            throw new ProblemException(Problems.NotFound, "There is no such problem code.");
        var status = problem.Status == 0 ? w["problems.beside"] : w["problems.status", ("n", problem.Status.ToString(CultureInfo.InvariantCulture))];
        return new Frame(w, problem.Title, "", $"""
            <p><code>{problem.Code}</code></p><p>{Page.Safe(status)}</p>
            <h2>{Page.Safe(w["problems.why"])}</h2><p>{Page.Safe(problem.Cause)}</p>
            <h2>{Page.Safe(w["problems.fix"])}</h2><p>{Page.Safe(problem.Fix)}</p>
            <p><a class="button" href="/problems">{Page.Safe(w["problems.all"])}</a></p>
            """);
    }

    private static string Table(string title, IEnumerable<Problem> problems, PageWords w) =>
        $"<h2>{Page.Safe(title)}</h2>{Tables.Of(title, [w["problems.code"], w["problems.what"]], problems.Select(Row))}";

    private static string Row(Problem problem) =>
        Tables.Row($"<a href=\"/problems/{problem.Code}\"><code>{problem.Code}</code></a>", Page.Safe(problem.Title));
}
