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

    private static IResult All() => Page.Of("What can go wrong",
        Table("Whole requests", Problems.All) + Table("Single fields", FieldProblems.All));

    private static IResult One(string code)
    {
        if (!Catalogue.TryGetValue(code, out var problem))
            throw new ProblemException(Problems.NotFound, "There is no such problem code.");
        var status = problem.Status == 0
            ? "<p>Stands in <code>errors</code> beside one field.</p>"
            : $"<p>HTTP status {problem.Status.ToString(CultureInfo.InvariantCulture)}.</p>";
        return Page.Of(problem.Title, $"""
            <p><code>{problem.Code}</code></p>
            {status}
            <h2>Why it happens</h2><p>{Page.Safe(problem.Cause)}</p>
            <h2>What to do</h2><p>{Page.Safe(problem.Fix)}</p>
            <p><a href="/problems">All problems</a></p>
            """);
    }

    private static string Table(string title, IEnumerable<Problem> problems) =>
        $"<h2>{title}</h2><table><thead><tr><th>Code</th><th>What</th></tr></thead><tbody>{string.Concat(problems.Select(Row))}</tbody></table>";

    private static string Row(Problem problem) =>
        $"<tr><td><a href=\"/problems/{problem.Code}\"><code>{problem.Code}</code></a></td><td>{Page.Safe(problem.Title)}</td></tr>";
}
