using System.Text.RegularExpressions;
using RebuildApi.Server.Access;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Docs;

/// <summary>The documents tell the truth: their calls are made, their addresses exist, their links lead somewhere.</summary>
public sealed partial class ReadmeTests
{
    private static readonly string Readme = File.ReadAllText(Repository.PathTo("README.md"));

    [Fact]
    public async Task The_calls_of_the_readme_print_what_it_shows()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateStranger();
        http.BaseAddress = new Uri("http://127.0.0.1:5280");
        var calls = CurlCall.In(Readme).ToArray();
        Assert.True(calls.Length >= 5);
        foreach (var call in calls)
        {
            using var answer = await http.Send(call.Method, call.Path, call.Body, [.. call.Headers.Select(h => (h.Name, h.Value.Replace("$TOKEN", server.Token, StringComparison.Ordinal)))]);
            var text = await answer.Content.ReadAsStringAsync();
            Assert.True(call.Shows(text), $"{call.Line}\nprints\n{text}");
        }
    }

    [Fact]
    public void The_readme_says_of_each_scope_what_the_code_says() =>
        Assert.All(Scopes.All, s => Assert.Contains($"| `{s.Scope.Word()}` | {s.May} |", Readme, StringComparison.Ordinal));

    [Fact]
    public async Task The_readme_names_every_address_and_no_other()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var served = (await ApiDocument.Of(http)).Operations.Select(o => o.Path)
            .Where(p => !p.EndsWith(".csv", StringComparison.Ordinal) && !p.EndsWith(".ndjson", StringComparison.Ordinal)).ToHashSet();
        var named = Address().Matches(Section("## Addresses")).Select(m => m.Groups[1].Value).ToHashSet();
        Assert.Equal(served.Order(), named.Order());
    }

    [Theory]
    [InlineData("README.md")]
    [InlineData("DEVELOPERS.md")]
    public void Every_link_to_a_file_leads_to_one(string document)
    {
        var text = File.ReadAllText(Repository.PathTo(document));
        var dead = Link().Matches(text).Select(m => m.Groups[1].Value)
            .Where(to => !to.StartsWith('#') && !to.Contains("://", StringComparison.Ordinal))
            .Where(to => !Path.Exists(Repository.PathTo(to.Split('#')[0])));
        Assert.Empty(dead);
    }

    [Theory]
    [InlineData("README.md")]
    [InlineData("DEVELOPERS.md")]
    public void Every_path_in_code_quotes_that_names_a_file_of_the_house_exists(string document)
    {
        var text = File.ReadAllText(Repository.PathTo(document));
        var missing = HousePath().Matches(text).Select(m => m.Groups[1].Value.TrimEnd('/'))
            .Where(path => !path.Contains('<', StringComparison.Ordinal) && !Path.Exists(Repository.PathTo(path)));
        Assert.Empty(missing);
    }

    private static string Section(string heading)
    {
        var from = Readme[(Readme.IndexOf(heading, StringComparison.Ordinal) + heading.Length)..];
        var next = from.IndexOf("\n## ", StringComparison.Ordinal);
        return next < 0 ? from : from[..next];
    }

    [GeneratedRegex(@"`(?:GET|POST|PATCH|PUT|DELETE)? ?(/(?:v1|health)[^`?]*)`")]
    private static partial Regex Address();

    [GeneratedRegex(@"\]\(([^)]+)\)")]
    private static partial Regex Link();

    [GeneratedRegex(@"`((?:src|plugins|tests|openapi|scripts|\.build|\.ci)/[^`\s]*)`")]
    private static partial Regex HousePath();
}
