using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using RebuildApi.Server;
using RebuildApi.TestKit;

namespace RebuildApi.Client.Tests;

/// <summary>The document is good enough to be built on: a client made from it compiles, knows every operation, and works a unit through.</summary>
public sealed class ClientTests(GeneratedClient client) : IClassFixture<GeneratedClient>
{
    [Fact]
    public async Task A_client_generated_from_the_document_compiles() => Assert.Empty((await client.Errors()).Take(20));

    [Fact]
    public async Task It_has_a_method_for_every_operation()
    {
        var paths = JsonNode.Parse(await File.ReadAllTextAsync(Repository.PathTo("openapi", "rebuild-api.v1.json")))!["paths"]!.AsObject();
        var wanted = paths.SelectMany(p => p.Value!.AsObject()).Select(o => (string)o.Value!["operationId"]! + "Async");
        var there = (await client.Assembly()).GetType("Rebuild.Generated.RebuildClient")!.GetMethods().Select(m => m.Name);
        Assert.Empty(wanted.Except(there, StringComparer.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData("Day", "Conforming")]
    [InlineData("Mistake", "404 unknown-unit")]
    public async Task It_speaks_with_the_service(string what, string outcome)
    {
        var folder = Directory.CreateTempSubdirectory("rebuild-client-test-");
        await using (var app = RebuildApplication.Create([$"--Rebuild:DataFolder={folder.FullName}", "--Rebuild:Listen=http://127.0.0.1:0", "--Rebuild:Access=this-machine", "--Logging:LogLevel:Default=Warning"]))
        {
            await app.StartAsync();
            using var http = new HttpClient { BaseAddress = new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single()) };
            var done = (Task<string>)(await client.Assembly()).GetType("Rebuild.Generated.Bench")!.GetMethod(what)!.Invoke(null, [http])!;
            Assert.Equal(outcome, await done, ignoreCase: true);
            await app.StopAsync();
        }

        folder.Delete(recursive: true);
    }
}
