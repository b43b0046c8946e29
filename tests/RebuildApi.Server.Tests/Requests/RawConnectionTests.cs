using System.Net.Sockets;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;

namespace RebuildApi.Server.Tests.Requests;

/// <summary>What only shows on a real connection.</summary>
public sealed class RawConnectionTests
{
    [Theory]
    [InlineData("GET /v1/units HTTP/1.0\r\n\r\n", "host-not-allowed")]
    [InlineData("GET /v1/units HTTP/1.1\r\nHost:\r\nConnection: close\r\n\r\n", "host-not-allowed")]
    [InlineData("GET /v1/units HTTP/1.1\r\nHost: elsewhere.example\r\nConnection: close\r\n\r\n", "host-not-allowed")]
    public async Task A_request_without_a_known_host_is_refused(string request, string code)
    {
        var answer = await Ask(request);
        Assert.StartsWith("HTTP/1.1 400", answer, StringComparison.Ordinal);
        Assert.Contains($"\"code\":\"{code}\"", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("GET /v1/units/%00 HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")]
    [InlineData("GET /../../etc/passwd HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")]
    [InlineData("NONSENSE\r\n\r\n")]
    public async Task What_is_no_proper_request_is_answered_with_a_client_error(string request) =>
        Assert.StartsWith("HTTP/1.1 4", await Ask(request), StringComparison.Ordinal);

    [Fact]
    public async Task No_answer_says_which_server_wrote_it() =>
        Assert.DoesNotContain("Server:", await Ask("GET /health/live HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"), StringComparison.OrdinalIgnoreCase);

    [Theory]
    [InlineData("http://0.0.0.0:0")]
    [InlineData("http://192.0.2.1:5280")]
    [InlineData("here")]
    public void An_address_that_others_could_reach_is_refused(string listen) =>
        Assert.Throws<InvalidOperationException>(() => Listening.Checked(new ServerOptions { Listen = listen }));

    private static async Task<string> Ask(string request)
    {
        var folder = Directory.CreateTempSubdirectory("rebuild-raw-test-");
        await using var app = RebuildApplication.Create(
            [$"--Rebuild:DataFolder={folder.FullName}", $"--Rebuild:PluginFolder={folder.FullName}", "--Rebuild:Access=this-machine", "--Rebuild:Listen=http://127.0.0.1:0", "--Logging:LogLevel:Default=None"]);
        await app.StartAsync();
        using var client = new TcpClient();
        await client.ConnectAsync("127.0.0.1", PortOf(app));
        await using var stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request));
        using var reader = new StreamReader(stream);
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        var answer = await reader.ReadToEndAsync(patience.Token);
        await app.StopAsync();
        return answer;
    }

    private static int PortOf(WebApplication app) =>
        new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single()).Port;
}
