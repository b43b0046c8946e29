using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using RebuildApi.Server.Access;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Access;

public sealed partial class FirstTokenTests
{
    [Fact]
    public async Task The_first_start_prints_an_administrators_token_that_works_and_no_later_one_does()
    {
        var folder = Directory.CreateTempSubdirectory("rebuild-first-token-test-");
        var first = await Start(folder, async (server, printed) =>
        {
            var secret = Token().Match(printed).Value;
            Assert.Contains("/sign-in#" + secret, printed, StringComparison.Ordinal);
            using var http = server.CreateClient();
            http.DefaultRequestHeaders.Authorization = new("Bearer", secret);
            Assert.Equal("administrator", (string)(await http.Read("/v1/access"))["scope"]!);
            await http.Make("/v1/tokens", """{ "name": "ada", "scope": "administrator" }""");
            await http.Make("/v1/tokens/administrator/revocations", "{}");
        });
        Assert.NotEmpty(first);
        Assert.Empty(await Start(folder, (_, _) => Task.CompletedTask));
        folder.Delete(recursive: true);
    }

    private static async Task<string> Start(DirectoryInfo folder, Func<WebApplicationFactory<Program>, string, Task> meanwhile)
    {
        var printed = new StringWriter();
        await using var plain = new WebApplicationFactory<Program>();
        await using var server = plain.WithWebHostBuilder(builder =>
        {
            builder.UseSetting("Rebuild:DataFolder", folder.FullName);
            builder.UseSetting("Rebuild:PluginFolder", folder.FullName);
            builder.UseSetting("Logging:LogLevel:Default", "None");
            builder.ConfigureTestServices(services => services.AddSingleton(new OwnConsole(printed)));
        });
        _ = server.Services;
        await meanwhile(server, printed.ToString());
        return printed.ToString();
    }

    [GeneratedRegex("rb_[A-Za-z0-9_-]{43}")]
    private static partial Regex Token();
}
