using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace RebuildApi.Cluster;

/// <summary>Benches that write one reading after the other, each with its key and tried again until it is acknowledged.</summary>
internal static class Load
{
    public static async Task<int> Run(Uri address, TimeSpan time, int benches, string name)
    {
        using var http = new HttpClient(new SocketsHttpHandler { MaxConnectionsPerServer = benches * 2 }) { BaseAddress = address, Timeout = TimeSpan.FromSeconds(20) };
        var log = new LoadLog();
        var all = Enumerable.Range(0, benches).Select(b => new BenchAtWork(http, $"{name}-{b}", log)).ToArray();
        var clock = Stopwatch.StartNew();
        using var end = new CancellationTokenSource(time);
        await Task.WhenAll(all.Select(bench => Task.Run(() => bench.Work(end.Token))));
        var elapsed = clock.Elapsed;
        var lost = 0;
        foreach (var bench in all)
            lost += await bench.Lost();
        log.Say(elapsed, lost);
        return lost == 0 ? 0 : 1;
    }
}

/// <summary>One bench with units of its own, one after the other.</summary>
internal sealed class BenchAtWork(HttpClient http, string bench, LoadLog log)
{
    // About what a gearbox gets before the next one comes.
    private const int ReadingsOfUnit = 50;
    private static readonly JsonSerializerOptions Camel = new(JsonSerializerDefaults.Web);
    private readonly List<(string Unit, string Id)> _acknowledged = [];

    /// <summary>Writes until the time is over; what is not acknowledged is sent again with the same key.</summary>
    public async Task Work(CancellationToken end)
    {
        for (var number = 0; !end.IsCancellationRequested; number++)
        {
            var unit = string.Create(CultureInfo.InvariantCulture, $"{bench}-u{number / ReadingsOfUnit}");
            var id = string.Create(CultureInfo.InvariantCulture, $"{bench}-{number}");
            if (number % ReadingsOfUnit == 0)
                await Until(() => Sent("/v1/units", new { id = unit, tag = unit, family = "brackenmere-4", person = "Wren" }, unit), end);
            var reading = new { id, at = "third-gear/bore", readings = new[] { new { value = 47.69, unit = "mm" } } };
            if (await Until(() => Sent($"/v1/units/{unit}/measurements", new { person = "Wren", bench, measurements = new[] { reading } }, id), end))
                _acknowledged.Add((unit, id));
        }
    }

    /// <summary>How many acknowledged readings are not there.</summary>
    public async Task<int> Lost()
    {
        var there = new HashSet<string>(StringComparer.Ordinal);
        foreach (var unit in _acknowledged.Select(a => a.Unit).Distinct())
        {
            var page = await http.GetFromJsonAsync<JsonObject>($"/v1/units/{unit}/measurements?limit=500");
            there.UnionWith(page!["items"]!.AsArray().Select(m => (string)m!["id"]!));
        }

        return _acknowledged.Count(a => !there.Contains(a.Id));
    }

    private static async Task<bool> Until(Func<Task<bool>> work, CancellationToken end)
    {
        while (!end.IsCancellationRequested)
        {
            if (await work())
                return true;
            await Task.Delay(50, CancellationToken.None);
        }

        return false;
    }

    private async Task<bool> Sent(string path, object body, string key)
    {
        var began = Stopwatch.GetTimestamp();
        try
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = JsonContent.Create(body, options: Camel) };
            request.Headers.Add("Idempotency-Key", key);
            using var answer = await http.SendAsync(request);
            log.Note(((int)answer.StatusCode).ToString(CultureInfo.InvariantCulture), answer.IsSuccessStatusCode, began);
            return answer.IsSuccessStatusCode;
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException)
        {
            log.Note("no answer", false, began);
            return false;
        }
    }
}

/// <summary>What the benches met.</summary>
internal sealed class LoadLog
{
    private readonly ConcurrentDictionary<string, int> _answers = new(StringComparer.Ordinal);
    private readonly ConcurrentBag<double> _milliseconds = [];
    private readonly Lock _lock = new();
    private long _lastGood = Stopwatch.GetTimestamp();
    private TimeSpan _longest;

    public void Note(string answer, bool good, long began)
    {
        _answers.AddOrUpdate(answer, 1, (_, n) => n + 1);
        if (!good)
            return;
        _milliseconds.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
        lock (_lock)
        {
            var now = Stopwatch.GetTimestamp();
            var gap = Stopwatch.GetElapsedTime(_lastGood, now);
            (_longest, _lastGood) = (gap > _longest ? gap : _longest, now);
        }
    }

    public void Say(TimeSpan elapsed, int lost)
    {
        var sorted = _milliseconds.Order().ToArray();
        var errors = string.Join(", ", _answers.Where(a => !a.Key.StartsWith('2')).OrderBy(a => a.Key, StringComparer.Ordinal).Select(a => $"{a.Value} x {a.Key}"));
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{sorted.Length} readings acknowledged, {lost} lost, {sorted.Length / elapsed.TotalSeconds:F0}/s, half within {At(sorted, 0.5):F1} ms, 99 % within {At(sorted, 0.99):F0} ms; errors: {(errors.Length == 0 ? "none" : errors)}; longest without an answer {_longest.TotalSeconds:F2} s"));
    }

    private static double At(double[] sorted, double share) => sorted.Length == 0 ? double.NaN : sorted[(int)(share * (sorted.Length - 1))];
}
