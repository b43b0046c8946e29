using System.Text.RegularExpressions;
using RebuildApi.Server.Composition.Stages;
using RebuildApi.Server.Pages;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Pages;

/// <summary>The words of the pages: each key that is used is there, and a second language is served to who asks for it.</summary>
public sealed partial class TongueTests
{
    [Fact]
    public void Every_key_that_a_page_uses_has_words()
    {
        var source = Directory.GetFiles(Repository.PathTo("src/RebuildApi.Server"), "*.cs", SearchOption.AllDirectories).SelectMany(f => Used().Matches(File.ReadAllText(f))).Select(m => m.Groups[1].Value);
        var scripts = Directory.GetFiles(Repository.PathTo("src/RebuildApi.Server/Pages/Assets"), "*.js").SelectMany(f => Said().Matches(File.ReadAllText(f))).Select(m => "js." + m.Groups[1].Value);
        var missing = source.Concat(scripts).Where(k => !k.EndsWith('.') && !PageWords.English.Keys.Contains(k)).Distinct();
        Assert.Empty(missing);
    }

    [Fact]
    public void Every_requirement_of_a_gate_and_every_check_that_is_signed_for_has_words()
    {
        var wanted = Gates.All.Keys.SelectMany(r => new[] { "gate." + r, "fix." + r }).Concat(SignedChecks.All.SelectMany(c => new[] { "check." + c, "fix." + c }));
        Assert.Empty(wanted.Except(PageWords.English.Keys));
    }

    [Fact]
    public async Task A_file_of_words_is_a_second_language_for_whoever_asks_for_it_and_leaves_no_english_behind()
    {
        await using var server = ShopServer.Open();
        Directory.CreateDirectory(Path.Combine(server.DataFolder, "words"));
        var words = PageWords.English.Keys.Select(k => $"{k} = «{PageWords.English[k]}»");
        await File.WriteAllLinesAsync(Path.Combine(server.DataFolder, "words", "de.txt"), words.Prepend("# Every word in marks."));
        using var http = await server.WithUnit();
        http.DefaultRequestHeaders.AcceptLanguage.ParseAdd("de-CH, de;q=0.9, en;q=0.5");
        await http.Make("/v1/labels", """{ "unit": "u1" }""");
        foreach (var path in new[] { "/", "/shop", "/bench/u1", "/units/u1", "/units/u1/record", "/units/u1/assembly", "/units/u1/teardown", "/units/u1/labels", "/sign-in", "/addresses", "/problems", "/problems/gate-not-met" })
        {
            var page = await http.GetStringAsync(path);
            Assert.Contains("<html lang=\"de\">", page, StringComparison.Ordinal);
            var left = System.Net.WebUtility.HtmlDecode(Data().Replace(page, ""));
            foreach (var english in PageWords.English.Keys.Select(k => PageWords.English[k]).Where(w => w.Length > 14 && !w.Contains('{')))
                Assert.DoesNotMatch($"(?<!«){Regex.Escape(english)}(?!»)", left);
        }

        http.DefaultRequestHeaders.AcceptLanguage.Clear();
        Assert.Contains("<html lang=\"en\">", await http.GetStringAsync("/"), StringComparison.Ordinal);
    }

    [Fact]
    public void Words_that_a_file_lacks_stay_english() =>
        Assert.Equal(PageWords.English["shop.title"], PageWords.Parse("de", "app = Werkbank", PageWords.English)["shop.title"]);

    [GeneratedRegex("\\bw(?:ords)?\\[\"([a-z][A-Za-z.-]*)\"[\\],]")]
    private static partial Regex Used();

    [GeneratedRegex("\\bsay\\.([A-Za-z]+)")]
    private static partial Regex Said();

    [GeneratedRegex("<script type=\"application/json\".*?</script>", RegexOptions.Singleline)]
    private static partial Regex Data();
}
