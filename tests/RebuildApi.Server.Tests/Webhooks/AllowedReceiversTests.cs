using System.Net;
using Microsoft.Extensions.Options;
using RebuildApi.Server.Webhooks;

namespace RebuildApi.Server.Tests.Webhooks;

public sealed class AllowedReceiversTests
{
    private static readonly IPAddress Elsewhere = IPAddress.Parse("192.0.2.7");

    [Theory]
    [InlineData("127.0.0.1", true)]
    [InlineData("127.9.9.9", true)]
    [InlineData("[::1]", true)]
    [InlineData("[::ffff:127.0.0.1]", true)]
    [InlineData("[::ffff:192.0.2.7]", false)]
    [InlineData("192.0.2.7", false)]
    [InlineData("169.254.169.254", false)]
    [InlineData("0.0.0.0", false)]
    [InlineData("[::]", false)]
    [InlineData("[fe80::1]", false)]
    public async Task Where_nothing_is_said_only_this_machine_is_told_anything(string host, bool allowed)
    {
        var receivers = With(new ServerOptions(), Elsewhere);
        if (allowed)
            Assert.Single(await receivers.Resolve(host, default));
        else
            await Assert.ThrowsAsync<ReceiverRefusedException>(() => receivers.Resolve(host, default));
    }

    [Theory]
    [InlineData("192.0.2.0/24")]
    [InlineData("192.0.2.7")]
    [InlineData("invoices.example")]
    public async Task A_network_an_address_and_a_host_can_be_allowed(string entry)
    {
        var receivers = With(new ServerOptions { WebhookReceivers = [entry] }, Elsewhere);
        Assert.Equal([Elsewhere], await receivers.Resolve("invoices.example", default));
        await Assert.ThrowsAsync<ReceiverRefusedException>(() => With(new ServerOptions { WebhookReceivers = [entry] }, IPAddress.Parse("198.51.100.1")).Resolve("other.example", default));
    }

    /// <summary>DNS rebinding: a name that led here when it was checked and leads elsewhere when it is used.</summary>
    [Fact]
    public async Task A_name_that_changes_its_address_is_refused_when_it_is_connected_to()
    {
        var asked = 0;
        var receivers = new AllowedReceivers(Options.Create(new ServerOptions()), (_, _) => Task.FromResult<IPAddress[]>([asked++ == 0 ? IPAddress.Loopback : Elsewhere]));
        Assert.Equal([IPAddress.Loopback], await receivers.Resolve("turning.example", default));
        using var http = new ReceiverHttp(receivers);
        using var request = new HttpRequestMessage(HttpMethod.Post, "http://turning.example:9/");
        var refused = await Assert.ThrowsAnyAsync<Exception>(() => http.Send(request, default));
        Assert.IsType<ReceiverRefusedException>(refused.InnerException ?? refused);
        Assert.Equal(2, asked);
    }

    [Fact]
    public async Task Of_several_addresses_of_a_name_only_those_allowed_are_connected_to() =>
        Assert.Equal([IPAddress.Loopback], await With(new ServerOptions(), Elsewhere, IPAddress.Loopback).Resolve("both.example", default));

    [Fact]
    public void An_entry_that_is_nothing_is_named_at_the_start()
    {
        var fault = Assert.Throws<InvalidOperationException>(() => With(new ServerOptions { WebhookReceivers = ["10.0.0.0/99"] }, Elsewhere));
        Assert.Contains("Rebuild:WebhookReceivers has 10.0.0.0/99", fault.Message, StringComparison.Ordinal);
    }

    private static AllowedReceivers With(ServerOptions options, params IPAddress[] found) => new(Options.Create(options), (_, _) => Task.FromResult(found));
}
