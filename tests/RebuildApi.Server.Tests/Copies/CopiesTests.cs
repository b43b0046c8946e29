using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Copies;

/// <summary>What a client may rely on whichever copy of the service answers it.</summary>
public sealed class CopiesTests(SharedCopies shared) : IClassFixture<SharedCopies>
{
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(30);

    private static string Unit(string id) => $$"""{ "id": "{{id}}", "tag": "T-1", "family": "{{ShopServer.Family}}", "person": "Ada" }""";

    [PostgresFact]
    public async Task A_repeated_request_gets_its_answer_of_the_other_copy_and_an_old_version_is_refused_there()
    {
        var copies = await shared.Copies;

        using var first = await copies.One.Send(HttpMethod.Post, "/v1/units", Unit("u1"), ("Idempotency-Key", "k1"));
        using var again = await copies.Other.Send(HttpMethod.Post, "/v1/units", Unit("u1"), ("Idempotency-Key", "k1"));
        Assert.Equal(await first.Content.ReadAsStringAsync(), await again.Content.ReadAsStringAsync());
        Assert.Equal(HttpStatusCode.Created, again.StatusCode);

        var tag = first.Headers.ETag!.ToString();
        using var changed = await copies.One.Send(HttpMethod.Patch, "/v1/units/u1", """{ "tag": "T-2" }""", ("If-Match", tag));
        using var late = await copies.Other.Send(HttpMethod.Patch, "/v1/units/u1", """{ "tag": "T-3" }""", ("If-Match", tag));
        Assert.Equal(HttpStatusCode.OK, changed.StatusCode);
        Assert.Equal(HttpStatusCode.PreconditionFailed, late.StatusCode);
        Assert.Equal("T-2", (string)(await copies.Other.Read("/v1/units/u1"))["tag"]!);
    }

    [PostgresFact]
    public async Task A_listener_at_one_copy_hears_what_is_recorded_at_the_other_and_a_photo_is_found_there()
    {
        var copies = await shared.Copies;
        using var stream = new StreamReader(await copies.Other.GetStreamAsync("/v1/events"));

        await copies.One.Make("/v1/units", Unit("u7"));

        using var patience = new CancellationTokenSource(Soon);
        string? line;
        while ((line = await stream.ReadLineAsync(patience.Token)) is not null && !line.Contains("\"u7\"", StringComparison.Ordinal))
        {
        }

        Assert.NotNull(line);
        byte[] photo = [0xFF, 0xD8, 0xFF, 0xE0, 0, 16, .. "JFIF"u8, 0, 1, 1, 0, 0, 1, 0, 1, 0, 0, 0xFF, 0xD9];
        using var kept = await copies.One.Send(HttpMethod.Post, "/v1/units/u7/attachments?person=Wren", photo, "image/jpeg", ("Idempotency-Key", "p1"));
        var id = (string)(await kept.Content.ReadFromJsonAsync<JsonObject>())!["id"]!;
        Assert.Equal(photo, await copies.Other.GetByteArrayAsync($"/v1/units/u7/attachments/{id}"));
    }

    [PostgresFact]
    public async Task A_family_file_that_was_approved_at_one_copy_is_in_use_at_the_other_when_it_lies_there_too()
    {
        var copies = await shared.Copies;
        var found = await copies.One.Read("/v1/plugins/ours.yaml");
        Assert.Equal("awaiting-approval", (string)found["state"]!);

        await copies.One.Make("/v1/plugins/ours.yaml/approvals", $$"""{ "sha256": "{{(string)found["sha256"]!}}", "person": "Ada" }""");

        for (var tries = 0; tries < 100 && (string)(await copies.Other.Read("/v1/plugins/ours.yaml"))["state"]! != "loaded"; tries++)
            await Task.Delay(100);
        Assert.Equal("loaded", (string)(await copies.Other.Read("/v1/plugins/ours.yaml"))["state"]!);
    }

    [PostgresFact]
    public async Task When_every_connection_is_cut_under_load_nothing_acknowledged_is_lost_and_the_copies_go_on()
    {
        var copies = await shared.Copies;
        var acknowledged = new System.Collections.Concurrent.ConcurrentBag<string>();
        var statuses = new System.Collections.Concurrent.ConcurrentBag<HttpStatusCode>();
        using var end = new CancellationTokenSource(TimeSpan.FromSeconds(4));
        var benches = Enumerable.Range(0, 8).Select(b => Task.Run(async () =>
        {
            for (var i = 0; !end.IsCancellationRequested; i++)
            {
                var id = FormattableString.Invariant($"u-{b}-{i}");
                using var answer = await (b % 2 == 0 ? copies.One : copies.Other).Send(HttpMethod.Post, "/v1/units", Unit(id), ("Idempotency-Key", id));
                statuses.Add(answer.StatusCode);
                if (answer.StatusCode == HttpStatusCode.Created)
                    acknowledged.Add(id);
            }
        })).ToArray();

        for (var cut = 0; cut < 3; cut++)
        {
            await Task.Delay(700);
            copies.Meddle("SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE pid <> pg_backend_pid() AND application_name = current_schema()");
        }

        await Task.WhenAll(benches);

        Assert.Empty(statuses.Distinct().Except([HttpStatusCode.Created, HttpStatusCode.ServiceUnavailable]));
        Assert.True(acknowledged.Count > 20, $"only {acknowledged.Count} were taken in");
        foreach (var id in acknowledged)
            Assert.Equal(HttpStatusCode.OK, (await copies.Other.GetAsync("/v1/units/" + id)).StatusCode);
        Assert.True((bool)(await copies.One.Read("/v1/audit/verification"))["intact"]!);
    }
}
