using System.Globalization;
using System.Net;
using Microsoft.Data.Sqlite;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Server.Tests.Records;

/// <summary>What benches hear when the disk fails them: never a 500, never a reading that was acknowledged and is gone.</summary>
public sealed class FaultTests
{
    [FileFact]
    public async Task A_full_disk_is_said_readings_are_still_shown_and_none_that_was_acknowledged_is_gone()
    {
        await using var server = ShopServer.Open().OpenedAs(o => o with { MaxPages = 200 });
        using var http = await server.WithUnit();
        var kept = new List<string>();
        HttpResponseMessage answer;
        while ((answer = await Read(http, kept.Count)).IsSuccessStatusCode)
            kept.Add(FormattableString.Invariant($"m{kept.Count}"));

        await IsUnavailable(answer, "disk-full");
        Assert.True(answer.Headers.RetryAfter?.Delta > TimeSpan.Zero);
        await IsUnready(http, "disk-full");
        Assert.NotEmpty(kept);
        var shown = (await http.GetStringAsync("/v1/units/u1/measurements.csv")).Split("\r\n");
        Assert.All(kept, id => Assert.Contains(shown, line => line.StartsWith(id + ",", StringComparison.Ordinal)));
        Assert.True((bool)(await http.Read("/v1/audit/verification"))["intact"]!);
    }

    [FileFact]
    public async Task Records_that_can_only_be_read_are_shown_and_a_change_of_them_is_refused_with_the_reason()
    {
        await using var server = ShopServer.Open().OpenedAs(o => o with { ReadOnly = true });
        await (SqliteStore.Open(server.Database)).DisposeAsync();
        using var http = server.CreateClient();

        using var refused = await http.Send(HttpMethod.Post, "/v1/units", """{ "tag": "T-1", "family": "brackenmere-4", "person": "Ada" }""");

        await IsUnavailable(refused, "read-only");
        await IsUnready(http, "read-only");
        Assert.Empty((await http.Read("/v1/units"))["items"]!.AsArray());
    }

    [FileFact]
    public async Task A_database_that_another_program_holds_is_said_and_is_used_again_when_it_is_let_go()
    {
        await using var server = ShopServer.Open().OpenedAs(o => o with { BusyTimeout = TimeSpan.FromMilliseconds(10) });
        using var http = await server.WithUnit();
        using var other = new SqliteConnection($"Data Source={server.Database.Path};Pooling=False");
        other.Open();
        using (other.BeginTransaction(deferred: false))
        {
            await IsUnavailable(await Read(http, 1), "locked");
            await IsUnready(http, "locked");
        }

        using var again = await Read(http, 1);
        Assert.Equal(HttpStatusCode.Created, again.StatusCode);
    }

    [FileTheory]
    [InlineData("torn")]
    [InlineData("garbage")]
    public async Task A_damaged_database_is_never_replaced_by_an_empty_one(string how)
    {
        await using var server = ShopServer.Open();
        await using (var store = SqliteStore.Open(server.Database))
            Assert.True((await store.Health(default)).Ready);
        var bytes = await File.ReadAllBytesAsync(server.Database.Path);
        bytes = how == "torn" ? bytes[..(bytes.Length / 2)] : [.. Enumerable.Repeat((byte)0x5A, bytes.Length)];
        await File.WriteAllBytesAsync(server.Database.Path, bytes);
        using var http = server.CreateClient();

        await IsUnavailable(await http.GetAsync("/v1/units"), "damaged");
        await IsUnavailable(await http.Send(HttpMethod.Post, "/v1/units", """{ "tag": "T-1", "family": "brackenmere-4", "person": "Ada" }"""), "damaged");
        await IsUnready(http, "damaged");
        Assert.Equal("live", (string)(await http.Read("/health/live"))["status"]!);
        Assert.Equal(bytes, await File.ReadAllBytesAsync(server.Database.Path));
    }

    [FileFact]
    public async Task A_database_of_a_newer_program_is_refused_and_left_alone()
    {
        await using var server = ShopServer.Open();
        await SqliteStore.Open(server.Database).DisposeAsync();
        server.Meddle("INSERT INTO migration (number, name, applied) VALUES (9999, 'of-tomorrow', '')");
        using var http = server.CreateClient();

        await IsUnavailable(await http.GetAsync("/v1/units"), "newer-schema");
        await IsUnready(http, "The database is at schema 9999");
    }

    private static Task<HttpResponseMessage> Read(HttpClient http, int number)
    {
        var id = number.ToString(CultureInfo.InvariantCulture);
        return http.Send(HttpMethod.Post, "/v1/units/u1/measurements", $$"""
            { "person": "Ada", "bench": "b", "measurements": [{ "id": "m{{id}}", "at": "third-gear/bore", "readings": [{ "value": 1.8776, "unit": "in" }] }] }
            """, ("Idempotency-Key", "k" + id));
    }

    private static async Task IsUnavailable(HttpResponseMessage answer, string code)
    {
        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        var problem = await answer.Problem();
        Assert.Equal(("storage-unavailable", code), ((string)problem["code"]!, (string)problem["storage"]!));
    }

    private static async Task IsUnready(HttpClient http, string reason)
    {
        using var answer = await http.GetAsync("/health/ready");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        var problem = await answer.Problem();
        Assert.Contains(reason, (string?)problem["storage"] + " " + (string)problem["detail"]!, StringComparison.Ordinal);
    }
}
