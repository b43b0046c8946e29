using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;
using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Benchmarks.Http;

/// <summary>A page of the list of units and the verdicts on one, with a hundred units stored and with a million, of which one in a hundred (but eighty at least) has a part and a reading.</summary>
internal static class GrowthBenchmark
{
    private const int Few = 100;
    private const int Many = 1_000_000;
    private const int Together = 1000;
    private const int Asked = 40;

    private static readonly StoredAnswer s_answer = new(201, "", new byte[2], ImmutableSortedDictionary<string, string>.Empty);

    public static async Task Run(TextWriter output)
    {
        var (few, many) = (await Measured(Few), await Measured(Many));
        await output.WriteLineAsync(FormattableString.Invariant(
            $"a page of 100 units: {few.Page:F2} ms with {Few} stored, {many.Page:F2} ms with {Many}, {many.Page / few.Page:F2} times (goal 1.50)"));
        await output.WriteLineAsync(FormattableString.Invariant(
            $"verdicts on a unit with a reading, worked out anew: {few.Verdicts:F2} ms and {many.Verdicts:F2} ms, {many.Verdicts / few.Verdicts:F2} times (goal 1.50)"));
        await output.WriteLineAsync(FormattableString.Invariant($"filling {Many} units: {many.Filling:F0} s, file {many.Size / 1e6:F0} MB"));
    }

    private static async Task<(double Page, double Verdicts, double Filling, long Size)> Measured(int units)
    {
        using var folder = new Scratch();
        var file = Path.Combine(folder.Path, "shop.db");
        var clock = Stopwatch.StartNew();
        await using (var store = SqliteStore.Open(new StoreOptions(file, TimeProvider.System)))
            await Fill(store, units);
        var filling = clock.Elapsed.TotalSeconds;
        using var service = RunningProgram.Service(folder.Path);
        await service.First("/health/ready");
        var pages = Enumerable.Repeat("/v1/units?limit=100", Asked).ToArray();
        var verdicts = Enumerable.Range(0, 2 * Asked).Select(i => $"/v1/units/{Id(i * Apart(units))}/verdicts?limit=500").ToArray();
        await Median(service, [.. pages, .. verdicts[..Asked]]);
        return (await Median(service, pages), await Median(service, verdicts[Asked..]), filling, new FileInfo(file).Length);
    }

    /// <summary>Every how-many-th unit has a reading: one in a hundred, or as many as are asked about.</summary>
    private static int Apart(int units) => Math.Max(1, units / Math.Max(2 * Asked, units / 100));

    private static async Task Fill(SqliteStore store, int units)
    {
        for (var first = 0; first < units; first += Together)
        {
            var from = first;
            await store.Write(new WriteRequest("bench-1", "fill", null, "", DryRun: false), session =>
            {
                for (var i = from; i < Math.Min(from + Together, units); i++)
                    TakeIn(session, i, i % Apart(units) == 0);
                return s_answer;
            }, CancellationToken.None);
        }
    }

    private static void TakeIn(IWriteSession session, int number, bool isRead)
    {
        var unit = Id(number);
        session.Open(new Unit(unit, "T-" + unit, new FamilyVersion("brackenmere-4", "1.0.0"), null, [], null, "teardown", DateTimeOffset.UnixEpoch, "Ada", 0));
        if (!isRead)
            return;
        var part = "gear-" + unit;
        session.Add(unit, new Component(part, 1, "third-gear", Origin.Unit, ImmutableSortedDictionary<string, string>.Empty, null));
        session.Place(unit, new Placement("third-gear", 1, part, PlacementRole.Found, Facing.Unspecified, null));
        session.Add(unit, new Measurement("m-" + unit, part, 1, "bore", [Reading.Of(Length.Millimetres(47.691m), "47.691", "mm")],
            new Taken(null, null, "Ada", "bench-1", DateTimeOffset.UnixEpoch, null), null));
    }

    private static string Id(int number) => string.Create(CultureInfo.InvariantCulture, $"u{number:D8}");

    private static async Task<double> Median(RunningProgram service, IEnumerable<string> paths)
    {
        var times = new List<double>();
        foreach (var path in paths)
        {
            var clock = Stopwatch.StartNew();
            await service.Http.GetByteArrayAsync(new Uri(path, UriKind.Relative));
            times.Add(clock.Elapsed.TotalMilliseconds);
        }

        return Ratios.Median(times);
    }
}
