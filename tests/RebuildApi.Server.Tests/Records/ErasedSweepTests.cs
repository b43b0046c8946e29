using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.Storage;

namespace RebuildApi.Server.Tests.Records;

/// <summary>What an erasure named goes, also when the service died before it could remove it; what anything still shows stays.</summary>
public sealed class ErasedSweepTests
{
    private static byte[] Photo(byte which) => [0xFF, 0xD8, 0xFF, 0xE0, which, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

    [Fact]
    public async Task What_a_death_between_an_erasure_and_the_removal_left_goes_at_the_next_start_and_what_is_shown_stays()
    {
        var folder = Directory.CreateTempSubdirectory("rebuild-sweep-test-");
        await using (var dying = ShopServer.Over(folder))
        {
            using var http = await Filled(dying);
            // As the service does it, up to the commit; then it dies.
            await dying.Services.GetRequiredService<IStore>().Write(new WriteRequest("test", "test", null, "", DryRun: false), session =>
            {
                session.Erase(new ErasureOrder("e1", "a1", "Ferry Lane Farm", "Ada", Files: true));
                return StoredAnswer.Nothing;
            }, default);
            Assert.True(Files(dying).Holds(NameOf(1)));
        }

        await using (var next = ShopServer.Over(folder))
        {
            using var http = next.CreateClient();
            await Until(() => !Files(next).Holds(NameOf(1)));
            Assert.Equal("attachment-erased", await Code(http, "/v1/units/a1/attachments/a1-1"));
            foreach (var shown in new[] { "a2/attachments/a2-2", "a2/attachments/a2-3" })
                Assert.Equal("", await Code(http, "/v1/units/" + shown));
        }

        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task An_old_copy_of_the_folder_that_was_put_back_is_found_within_the_hour()
    {
        var clock = new FakeTimeProvider(DateTimeOffset.UnixEpoch.AddYears(50));
        await using var server = ShopServer.Open().At(clock);
        using var http = await Filled(server);
        await http.Make("/v1/customers/erasures", """{ "customer": "Ferry Lane Farm", "person": "Ada", "files": true }""");
        Assert.False(Files(server).Holds(NameOf(1)));
        await Files(server).Keep(Photo(1), default);

        await Until(() =>
        {
            clock.Advance(TimeSpan.FromHours(1));
            return !Files(server).Holds(NameOf(1));
        });

        Assert.Equal("", await Code(http, "/v1/units/a2/attachments/a2-2"));
    }

    [Fact]
    public async Task A_photo_that_is_being_sent_again_is_kept_or_refused_but_never_lost()
    {
        var sending = ShopServer.Open();
        await using var real = Stores.Open(sending.Database);
        await using var server = sending.On(RacedStore.Over(real, out var raced));
        using var http = await Filled(server);
        await http.Make("/v1/customers/erasures", """{ "customer": "Ferry Lane Farm", "person": "Ada", "files": true }""");

        // The file is on the disk, its record is not yet committed, and just then it is looked at.
        raced.Before = () => ErasedFiles.Sweep(real, Files(server), default);
        using var refused = await Send(http, "u1", 1);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, refused.StatusCode);
        Assert.Empty(await real.All<Attachment>(new ShopFilter("u1"), default));

        raced.Before = null;
        using var taken = await Send(http, "u1", 1);
        Assert.Equal(HttpStatusCode.Created, taken.StatusCode);
        Assert.Equal(0, await ErasedFiles.Sweep(real, Files(server), default));
        Assert.Equal("", await Code(http, "/v1/units/u1/attachments/u1-1"));
    }

    // The customer's unit shows photos 1 and 2; another one's shows 2 and 3.
    private static async Task<HttpClient> Filled(ShopServer server)
    {
        var http = await server.WithUnit();
        await http.Make("/v1/units", """{ "id": "a1", "tag": "A-1", "family": "brackenmere-4", "person": "Ada", "customer": "Ferry Lane Farm" }""");
        await http.Make("/v1/units", """{ "id": "a2", "tag": "A-2", "family": "brackenmere-4", "person": "Ada", "customer": "Gull Point Taxis" }""");
        foreach (var (unit, which) in new[] { ("a1", 1), ("a1", 2), ("a2", 2), ("a2", 3) })
        {
            using var sent = await Send(http, unit, (byte)which);
            Assert.True(sent.IsSuccessStatusCode, await sent.Content.ReadAsStringAsync());
        }

        await http.Make("/v1/units/a1/stages", """{ "to": "returned-unrepaired", "person": "Ada", "note": "Too dear." }""");
        return http;
    }

    private static Task<HttpResponseMessage> Send(HttpClient http, string unit, byte which) =>
        http.Send(HttpMethod.Post, $"/v1/units/{unit}/attachments?person=Ada&id={unit}-{which}", Photo(which), "image/jpeg");

    private static AttachmentFolder Files(ShopServer server) => server.Services.GetRequiredService<AttachmentFolder>();

    private static string NameOf(byte which) => AttachmentFolder.NameOf(Photo(which));

    private static async Task<string> Code(HttpClient http, string address)
    {
        using var answer = await http.GetAsync(address);
        return answer.IsSuccessStatusCode ? "" : (string)(await answer.Problem())["code"]!;
    }

    private static async Task Until(Func<bool> done)
    {
        for (var tries = 0; tries < 600 && !done(); tries++)
            await Task.Delay(50);
        Assert.True(done());
    }
}
