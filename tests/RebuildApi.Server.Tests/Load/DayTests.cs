using System.Diagnostics;
using System.Globalization;
using System.Text;
using RebuildApi.Server.Tests.Kit;
using Xunit.Abstractions;

namespace RebuildApi.Server.Tests.Load;

/// <summary>
/// Sixteen benches at one service on real connections, each recording and asking without a pause. Nothing may be refused or lost; how long it took is
/// printed and not held against anything. <c>scripts/soak/day</c> runs a minute of it.
/// </summary>
public sealed class DayTests(ITestOutputHelper output)
{
    private const int Benches = 16;
    private static readonly int Seconds = int.TryParse(Environment.GetEnvironmentVariable("DAY_SECONDS"), NumberStyles.None, CultureInfo.InvariantCulture, out var s) ? s : 3;

    [Fact]
    public async Task Sixteen_benches_are_served_without_an_error_and_nothing_is_lost()
    {
        await using var server = await RealServer.Open();
        using var http = server.Client();
        for (var i = 0; i < Benches; i++)
            await http.Make("/v1/units", $$"""{ "id": "u{{i}}", "tag": "T", "family": "{{ShopServer.Family}}", "person": "Ada" }""");
        using var over = new CancellationTokenSource(TimeSpan.FromSeconds(Seconds));
        var days = await Task.WhenAll(Enumerable.Range(0, Benches).Select(i => Bench(server, i, over.Token)));
        for (var i = 0; i < Benches; i++)
            Assert.Equal(days[i].Recorded, Lines(await http.GetStringAsync($"/v1/units/u{i}/measurements.ndjson")));
        var times = days.SelectMany(d => d.Times).Order().ToArray();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{times.Length} requests in {Seconds} s, 0 errors; p50 {At(times, 0.5):0.0} ms, p99 {At(times, 0.99):0.0} ms, longest {times[^1]:0.0} ms"));
    }

    private static async Task<(int Recorded, List<double> Times)> Bench(RealServer server, int bench, CancellationToken over)
    {
        using var http = server.Client();
        var times = new List<double>();
        var recorded = 0;
        while (!over.IsCancellationRequested)
        {
            await Ask(http, HttpMethod.Post, $"/v1/units/u{bench}/measurements", Reading(bench, recorded), $"b{bench}-{recorded}", times);
            recorded++;
            await Ask(http, HttpMethod.Get, $"/v1/units/u{bench}", null, null, times);
            await Ask(http, HttpMethod.Get, recorded % 10 == 0 ? $"/v1/units/u{bench}/verdicts" : $"/v1/units/u{bench}/measurements?limit=5", null, null, times);
        }

        return (recorded, times);
    }

    private static async Task Ask(HttpClient http, HttpMethod method, string path, string? body, string? key, List<double> times)
    {
        using var request = new HttpRequestMessage(method, path) { Content = body is null ? null : new StringContent(body, Encoding.UTF8, "application/json") };
        if (key is not null)
            request.Headers.Add("Idempotency-Key", key);
        var began = Stopwatch.GetTimestamp();
        using var answer = await http.SendAsync(request);
        times.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
        Assert.True(answer.IsSuccessStatusCode, $"{method} {path}: {answer.StatusCode} {await answer.Content.ReadAsStringAsync()}");
    }

    private static string Reading(int bench, int n) => string.Create(CultureInfo.InvariantCulture,
        $$"""{ "person": "Ada", "bench": "bench-{{bench}}", "measurements": [{ "at": "third-gear/length", "readings": [{ "value": 1.51{{n % 100:00}}, "unit": "in" }] }] }""");

    // The last line says how many there were.
    private static int Lines(string ndjson) => ndjson.Count(c => c == '\n') - 1;

    private static double At(double[] sorted, double share) => sorted[(int)Math.Min(sorted.Length - 1, share * sorted.Length)];
}
