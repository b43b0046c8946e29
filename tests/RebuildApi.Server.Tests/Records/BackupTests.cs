using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using RebuildApi.Server.Backups;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Records;

public sealed class BackupTests
{
    [Fact]
    public async Task A_backup_on_demand_is_checked_and_listed()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var made = await http.Make("/v1/backups", "{}");
        var listed = Assert.Single((await http.Read("/v1/backups"))["items"]!.AsArray())!;
        var read = await http.Read($"/v1/backups/{made["id"]}");

        Assert.True((bool)made["verified"]!);
        Assert.Equal((string)(await http.Read("/v1/audit/verification"))["head"]!, (string)made["head"]!);
        Assert.Equal((string)made["id"]!, (string)listed["id"]!);
        Assert.True((bool)read["verified"]!);
        Assert.True(File.Exists(Path.Combine(server.DataFolder, "backups", (string)made["id"]!, "shop.db")));
        using var none = await http.GetAsync("/v1/backups/20000101T000000000Z");
        Assert.Equal("unknown-backup", (string)(await none.Problem())["code"]!);
    }

    [Fact]
    public async Task A_dry_run_leaves_no_backup()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var tried = await http.Send(HttpMethod.Post, "/v1/backups?dryRun=true", "{}");
        Assert.Equal(HttpStatusCode.Created, tried.StatusCode);
        Assert.Empty((await http.Read("/v1/backups"))["items"]!.AsArray());
    }

    [Fact]
    public async Task A_failed_backup_is_a_clear_problem_and_shows_in_the_list_and_in_readiness_until_one_succeeds()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var folder = Path.Combine(server.DataFolder, "backups");
        await File.WriteAllTextAsync(folder, "a file where the folder should be");
        using var refused = await http.Send(HttpMethod.Post, "/v1/backups", "{}");

        Assert.Equal(HttpStatusCode.ServiceUnavailable, refused.StatusCode);
        Assert.Equal("io-error", (string)(await refused.Problem())["storage"]!);
        var listed = Assert.Single((await http.Read("/v1/backups"))["items"]!.AsArray())!;
        Assert.False((bool)listed["verified"]!);
        Assert.NotEmpty((string)listed["problems"]![0]!);
        Assert.False(await IsOk(http));

        File.Delete(folder);
        await http.Make("/v1/backups", "{}");
        Assert.True(await IsOk(http));
        Assert.True((bool)Assert.Single((await http.Read("/v1/backups"))["items"]!.AsArray())!["verified"]!);
    }

    [Fact]
    public async Task A_backup_that_was_missed_is_made_after_the_start_and_the_next_one_a_day_later()
    {
        var clock = new FakeTimeProvider(SnapshotBuilder.Noon);
        await using var server = ShopServer.Open().At(clock);
        using var http = await server.WithUnit();
        await Until(clock, server, 1);
        clock.Advance(TimeSpan.FromHours(13.9));
        await Until(clock, server, 1);
        clock.Advance(TimeSpan.FromHours(1));
        await Until(clock, server, 2);

        Assert.All((await http.Read("/v1/backups"))["items"]!.AsArray(), b => Assert.Equal("schedule", (string)b!["by"]!));
    }

    [Theory]
    [InlineData("2026-03-02T12:00:00Z", "2026-03-02T02:00:00Z")]
    [InlineData("2026-03-02T01:59:00Z", "2026-03-01T02:00:00Z")]
    [InlineData("2026-03-02T02:00:00Z", "2026-03-02T02:00:00Z")]
    public void A_backup_is_due_at_the_last_time_of_day_that_has_passed(string now, string due) => Assert.Equal(
        DateTimeOffset.Parse(due, System.Globalization.CultureInfo.InvariantCulture),
        BackupTimes.Of("02:00", TimeZoneInfo.Utc)!.LastDue(DateTimeOffset.Parse(now, System.Globalization.CultureInfo.InvariantCulture)));

    [Fact]
    public void A_time_of_day_is_read_strictly()
    {
        Assert.Null(BackupTimes.Of("off", TimeZoneInfo.Utc));
        Assert.Throws<FormatException>(() => BackupTimes.Of("2 am", TimeZoneInfo.Utc));
    }

    /// <summary>Lets minutes pass until so many backups are there; the schedule looks at the clock once a minute.</summary>
    private static async Task Until(FakeTimeProvider clock, ShopServer server, int backups)
    {
        var desk = server.Services.GetRequiredService<BackupDesk>();
        for (var tries = 0; tries < 200 && desk.Shelf.List().Length < backups; tries++)
        {
            clock.Advance(TimeSpan.FromSeconds(20));
            await Task.Delay(50);
        }

        Assert.Equal(backups, desk.Shelf.List().Length);
    }

    private static async Task<bool> IsOk(HttpClient http) =>
        (bool)(await http.Read("/health/ready"))["checks"]!.AsArray().Single(c => (string)c!["name"]! == "backups")!["ok"]!;
}
