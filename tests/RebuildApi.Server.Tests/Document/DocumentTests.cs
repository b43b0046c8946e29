using System.Text.Json;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Document;

/// <summary>The OpenAPI document is reviewed text: it changes only on purpose, and keeps to house rules.</summary>
public sealed class DocumentTests
{
    private static readonly string[] Words = ["summary", "description", "operationId"];
    private static readonly string Reviewed = Repository.PathTo("openapi", "rebuild-api.v1.json");

    [Fact]
    public async Task The_served_document_is_the_reviewed_one()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var served = (await ApiDocument.Of(http)).Root.ToJsonString(new JsonSerializerOptions { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }) + "\n";
        if (Environment.GetEnvironmentVariable("RB_ACCEPT") == "1")
            await File.WriteAllTextAsync(Reviewed, served);
        Assert.True(await File.ReadAllTextAsync(Reviewed) == served, "The document changed. Look at the difference, and accept it with RB_ACCEPT=1.");
    }

    [Fact]
    public async Task Every_operation_has_words_answers_and_a_say_on_security()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var document = await ApiDocument.Of(http);
        var tags = document.Root["tags"]!.AsArray().Select(t => (string)t!["name"]!).ToHashSet();
        Assert.Empty(document.Operations.SelectMany(o => Faults(o, tags)));
        Assert.Equal(document.Operations.Count(), document.Operations.Select(o => (string)o.Node["operationId"]!).Distinct().Count());
    }

    [Fact]
    public async Task Every_schema_has_words_for_itself_and_for_each_property()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var schemas = (await ApiDocument.Of(http)).Root["components"]!["schemas"]!.AsObject();
        var wordless =
            from schema in schemas
            from property in schema.Value!["properties"]?.AsObject() ?? []
            where property.Value!["description"] is null && property.Value["$ref"] is null
            select schema.Key + "." + property.Key;
        Assert.Empty(wordless);
    }

    [Fact]
    public async Task Every_problem_code_has_a_page_that_says_why_and_what_to_do()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var all = Errors.Problems.All.Concat(Errors.FieldProblems.All).ToArray();
        Assert.Equal(all.Length, all.Select(p => p.Code).Distinct().Count());
        foreach (var problem in all)
        {
            var page = await http.GetStringAsync("/problems/" + problem.Code);
            Assert.Contains("Why it happens", page, StringComparison.Ordinal);
            Assert.DoesNotContain("http://", page, StringComparison.Ordinal);
            Assert.DoesNotContain("https://", page, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/docs/index.html")]
    [InlineData("/problems")]
    [InlineData("/v1/families/brackenmere-4/sheet.html")]
    public async Task Every_page_needs_nothing_from_anywhere_else(string path)
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var page = await http.GetStringAsync(path);
        Assert.DoesNotContain("src=\"http", page, StringComparison.Ordinal);
        Assert.DoesNotContain("href=\"http", page, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Faults(Operation operation, HashSet<string> tags)
    {
        var node = operation.Node;
        foreach (var words in Words.Where(w => string.IsNullOrWhiteSpace((string?)node[w])))
            yield return $"{operation}: no {words}";
        if (node["tags"] is not JsonArray { Count: 1 } own || !tags.Contains((string)own[0]!))
            yield return $"{operation}: not exactly one known tag";
        var statuses = node["responses"]!.AsObject().Select(r => r.Key).ToArray();
        if (!statuses.Any(s => s[0] == '2') || !statuses.Any(s => s[0] == '4'))
            yield return $"{operation}: no success or no error answer";
        if (node["security"] is null)
            yield return $"{operation}: nothing said on security";
        foreach (var parameter in operation.Parameters.Where(p => string.IsNullOrWhiteSpace((string?)p["description"])))
            yield return $"{operation}: parameter {parameter["name"]} has no words";
    }
}
