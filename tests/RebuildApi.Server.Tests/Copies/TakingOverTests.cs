using RebuildApi.Server.Tests.Kit;
using RebuildApi.Server.Tests.Webhooks;

namespace RebuildApi.Server.Tests.Copies;

public sealed class TakingOverTests
{
    private static string Unit(string id) => $$"""{ "id": "{{id}}", "tag": "T-1", "family": "{{ShopServer.Family}}", "person": "Ada" }""";

    [PostgresFact]
    public async Task One_copy_tells_a_receiver_and_the_other_goes_on_when_it_ends()
    {
        await using var copies = await TwoCopies.Open();
        await using var receiver = await LoopbackReceiver.Open();
        await copies.Other.Make("/v1/webhooks", $$"""{ "id": "w1", "name": "Invoices", "address": "{{receiver.Address}}", "kinds": ["unit"], "person": "Ada" }""");

        await copies.One.Make("/v1/units", Unit("u1"));
        await copies.Other.Make("/v1/units", Unit("u2"));
        await Got(receiver, 2);

        await copies.First.StopAsync();
        await copies.Other.Make("/v1/units", Unit("u3"));
        await Got(receiver, 3);
        await Task.Delay(TimeSpan.FromSeconds(1));

        Assert.Equal(3, receiver.Messages.Count);
        Assert.Equal(3, receiver.Messages.Select(m => m.Id).Distinct().Count());
    }

    private static async Task Got(LoopbackReceiver receiver, int messages)
    {
        for (var tries = 0; tries < 300 && receiver.Messages.Count < messages; tries++)
            await Task.Delay(100);
        Assert.Equal(messages, receiver.Messages.Count);
    }
}
