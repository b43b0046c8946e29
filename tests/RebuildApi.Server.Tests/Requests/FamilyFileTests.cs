using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Requests;

/// <summary>A family file checked over HTTP: as a file, and as text in JSON.</summary>
public sealed class FamilyFileTests
{
    private static readonly string s_sound = File.ReadAllText(Repository.PathTo("src", "RebuildApi.Server", "Authoring", "Scaffold", "yaml", "ID-OF-FAMILY.yaml"))
        .Replace("ID-OF-FAMILY", "marsh-1", StringComparison.Ordinal);

    [Fact]
    public async Task A_sound_file_is_usable_and_its_hash_is_told()
    {
        var (status, answer) = await Check(s_sound);

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.True((bool)answer["usable"]!);
        Assert.Equal("marsh-1", (string)answer["family"]!);
        Assert.Empty(answer["diagnostics"]!.AsArray());
    }

    [Fact]
    public async Task A_dangling_name_is_told_with_its_line()
    {
        var (_, answer) = await Check(s_sound.Replace("piece of ring", "piece of rign", StringComparison.Ordinal));
        var line = s_sound.Split('\n').Index().Single(l => l.Item.Contains("gap:", StringComparison.Ordinal)).Index + 1;

        Assert.False((bool)answer["usable"]!);
        Assert.Equal(("series-unknown", line), ((string)answer["diagnostics"]![0]!["code"]!, (int)answer["diagnostics"]![0]!["line"]!));
    }

    private static async Task<(HttpStatusCode Status, JsonNode Answer)> Check(string yaml)
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        using var body = new StringContent(yaml, Encoding.UTF8, "application/yaml");
        using var answer = await http.PostAsync("/v1/families/validate", body);
        return (answer.StatusCode, JsonNode.Parse(await answer.Content.ReadAsStringAsync())!);
    }
}
