using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using Xunit.Abstractions;

namespace RebuildApi.PluginHost.Tests;

/// <summary>
/// Every bad plug-in of the shelf dropped into a running service, approved and asked, while a client keeps asking for the verdicts of another family. The ratio of
/// the answering times is printed, not held: it says more of the machine than of the service. <c>REBUILD_SOAK_SHELF</c> takes in those that must be waited a
/// minute for.
/// </summary>
[Collection(Alone.Name)]
public sealed class ShelfUnderLoadTests(ITestOutputHelper output)
{
    private static readonly bool s_long = Environment.GetEnvironmentVariable("REBUILD_SOAK_SHELF") is not null;

    /// <summary>A plug-in, what it comes to once it is approved, and the family whose rules in code are then asked.</summary>
    private static readonly (string Id, string State, string? Family)[] s_shelf =
    [
        ("throws-in-constructor", "failed", null), ("throws-in-declare", "failed", null), ("declares-half", "failed", null), ("exits-in-declare", "failed", null),
        ("says-another-name", "refused", null), ("newer-contract", "refused", null), ("bundles-own-contract", "loaded", "shelf-bundles"),
        ("throws-in-hook", "loaded", "shelf-throws"), ("loops-in-hook", "loaded", "shelf-loops"), ("hostile", "loaded", "shelf-hostile"),
        ("missing-dependency", "refused", null), ("native-library", "refused", null), ("not-an-assembly", "refused", null), ("crowded", "refused", null),
        .. s_long ? [("loops-in-constructor", "failed", (string?)null)] : Array.Empty<(string, string, string?)>(),
    ];

    [Fact]
    public async Task Other_families_are_answered_throughout_and_nothing_is_left_behind()
    {
        await using var service = await RunningService.Start();
        await service.Post("/v1/units", """{ "id": "u1", "tag": "T-1", "family": "brackenmere-4", "person": "Ada" }""");
        var quiet = await Asking(service, Task.Delay(TimeSpan.FromSeconds(2)));
        var (files, children) = (service.OpenFiles, service.Children);

        var busy = await Asking(service, DropAll(service));
        await RunningService.Until(() => Task.FromResult(service.Children <= children));

        output.WriteLine(FormattableString.Invariant(
            $"{s_shelf.Length} bad plug-ins: {busy.Times.Count} answers for others, {busy.Errors} errors, median {Median(busy.Times) / Median(quiet.Times):0.0} times that of a quiet service; open files {files} then {service.OpenFiles}, processes {children} then {service.Children}"));
        Assert.Equal((0, 0), (quiet.Errors, busy.Errors));
        Assert.NotEmpty(busy.Times);
        Assert.True(service.OpenFiles <= files + 16, $"{service.OpenFiles} files are open, {files} were.");
    }

    private async Task DropAll(RunningService service)
    {
        foreach (var (id, state, family) in s_shelf)
        {
            Drop(service, id);
            await RunningService.Until(async () => await service.Plugin(id) is { } seen && (string)seen["state"]! != "removed");
            var dropped = (await service.Plugin(id))!;
            if ((string)dropped["state"]! == "awaiting-approval")
                await service.Post($"/v1/plugins/{id}/approvals", $$"""{ "sha256": "{{dropped["sha256"]}}", "person": "Ada" }""");
            var stands = (await service.Plugin(id))!;
            output.WriteLine($"{id}: {stands["state"]}: {stands["reason"]} {stands["refusedFamilies"]?.ToJsonString()}");
            Assert.Equal(state, (string)stands["state"]!);
            Assert.NotEmpty((string)stands["reason"]!);
            if (family is not null)
                await service.Post("/v1/judgements", UnitOf(family), "application/x-ndjson");
            Directory.Delete(Path.Combine(service.Drop, id), recursive: true);
            await RunningService.Until(async () => (string)(await service.Plugin(id))!["state"]! == "removed");
        }
    }

    private static void Drop(RunningService service, string id)
    {
        var folder = Directory.CreateDirectory(Path.Combine(service.Drop, id)).FullName;
        if (id == "crowded")
        {
            foreach (var number in Enumerable.Range(0, 10_000))
                File.Create(Path.Combine(folder, number.ToString(CultureInfo.InvariantCulture))).Dispose();
        }
        else if (id is "native-library" or "not-an-assembly")
        {
            var native = Directory.EnumerateFiles(RuntimeEnvironment.GetRuntimeDirectory(), "*System.Native.*").First();
            File.WriteAllBytes(Path.Combine(folder, id + ".dll"), id == "native-library" ? File.ReadAllBytes(native) : "Nothing to see here."u8.ToArray());
        }
        else
        {
            var from = id == "missing-dependency" ? [Shelf.PathOf("with-dependency")] : Directory.GetFiles(Shelf.FolderOf(id), "*.dll");
            foreach (var file in from)
                File.Copy(file, Path.Combine(folder, id == "missing-dependency" ? id + ".dll" : Path.GetFileName(file)));
        }
    }

    private static string UnitOf(string family) => $$"""
        { "unit": "x", "family": { "id": "{{family}}", "semVer": "1.0.0" }, "complaint": [], "components": [], "placements": [], "measurements": [], "trials": [], "findings": [], "instruments": [], "policy": { "version": "default", "decision": "guarded", "probability": 0.95, "duty": "ordinary", "limits": [] } }
        """.Trim();

    private static async Task<(List<double> Times, int Errors)> Asking(RunningService service, Task until)
    {
        var (times, errors) = (new List<double>(), 0);
        while (!until.IsCompleted)
        {
            var began = Stopwatch.GetTimestamp();
            using var answer = await service.Http.GetAsync(new Uri("/v1/units/u1/verdicts?limit=1", UriKind.Relative));
            times.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
            errors += answer.IsSuccessStatusCode ? 0 : 1;
        }

        await until;
        return (times, errors);
    }

    private static double Median(List<double> times) => times.Order().ElementAt(times.Count / 2);
}
