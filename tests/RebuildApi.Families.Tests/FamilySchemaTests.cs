using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using FamilyFiles;
using FamilyFiles.Yaml;
using Json.Schema;

namespace RebuildApi.Families.Tests;

/// <summary>The published schema of a family file says what the reader takes (JSON Schema 2020-12). To accept a change run with RB_ACCEPT=1 and read the difference.</summary>
public class FamilySchemaTests
{
    private static readonly string s_published = Repository.PathTo("openapi", "family.schema.json");
    private static readonly JsonSerializerOptions s_readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    [Fact]
    public void The_published_schema_is_the_one_of_the_reader()
    {
        var own = new FamilyFilesPlugin().Schema().ToJsonString(s_readable) + "\n";
        if (Environment.GetEnvironmentVariable("RB_ACCEPT") == "1")
            File.WriteAllText(s_published, own);

        Assert.Equal(File.ReadAllText(s_published), own);
    }

    [Fact]
    public void A_file_that_the_reader_takes_fits_the_schema()
    {
        var file = File.ReadAllBytes(Repository.PathTo("plugins", "family-files", "examples", "brackenmere-4.yaml"));

        Assert.True(Fits(file));
    }

    [Theory]
    [InlineData("version: 1.0.0", "versoin: 1.0.0")]
    [InlineData("single-use: true", "single-use: perhaps")]
    [InlineData("trial: gap-with-pieces", "trial: guesswork")]
    [InlineData("readings: 4", "readings: four")]
    [InlineData("template: engagement-form", "")]
    public void What_the_schema_refuses_the_reader_refuses_too(string right, string wrong)
    {
        var text = File.ReadAllText(Repository.PathTo("plugins", "family-files", "examples", "brackenmere-4.yaml"));
        var at = text.IndexOf(right, StringComparison.Ordinal);
        var file = Encoding.UTF8.GetBytes(text[..at] + wrong + text[(at + right.Length)..]);

        Assert.False(Fits(file));
        Assert.Null(new FamilyFilesPlugin().Read("broken.yaml", file).Family);
    }

    private static bool Fits(byte[] file)
    {
        using var instance = JsonDocument.Parse(Json(NodeReader.Read(file))!.ToJsonString());
        return JsonSchema.FromText(File.ReadAllText(s_published)).Evaluate(instance.RootElement).IsValid;
    }

    /// <summary>A file as an editor's YAML support sees it: numbers and truths are told from words (YAML 1.2 core schema).</summary>
    private static JsonNode? Json(Node node) => node switch
    {
        ScalarNode { Text: "true" or "false" } truth => JsonValue.Create(truth.Text == "true"),
        ScalarNode number when long.TryParse(number.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole) => JsonValue.Create(whole),
        ScalarNode number when decimal.TryParse(number.Text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) => JsonValue.Create(value),
        ScalarNode text => JsonValue.Create(text.Text),
        ListNode list => new JsonArray([.. list.Items.Select(Json)]),
        MapNode map => new JsonObject(map.Entries.Select(e => KeyValuePair.Create(e.Key.Text, Json(e.Value)))),
        _ => null,
    };
}
