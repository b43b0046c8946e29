using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Runtime.InteropServices;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Does, rule by rule, what would end a service that let it in.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public PluginManifest Manifest => SmallFamily.Manifest("hostile");

    public ImmutableArray<Family> Declare() =>
    [
        SmallFamily.Named(
            "shelf-hostile",
            SmallFamily.Hook("exits"), SmallFamily.Hook("fails-fast"), SmallFamily.Hook("overflows-stack"), SmallFamily.Hook("throws-on-thread"),
            SmallFamily.Hook("eats-objects"), SmallFamily.Hook("eats-memory"), SmallFamily.Hook("floods-output"), SmallFamily.Hook("spawns"),
            SmallFamily.Hook("writes-a-file"), SmallFamily.Hook("calls-out"), SmallFamily.Hook("looks-around"), SmallFamily.Hook("loops-for-long", 300_000)),
    ];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot)
    {
        var said = Do(hookId, snapshot.Unit);
        var reason = new Reason("said", ImmutableSortedDictionary<string, string>.Empty.Add("words", said), hookId);
        return new HookAnswer([SmallFamily.Verdict(hookId, Compatibility.Compatible, reason)]);
    }

    private static string Do(string hook, string unit) => hook switch
    {
        "exits" => Then(() => Environment.Exit(77)),
        "fails-fast" => Then(() => Environment.FailFast("enough")),
        "overflows-stack" => Deeper(0).ToString(CultureInfo.InvariantCulture),
        "throws-on-thread" => Then(ThrowElsewhere),
        "eats-objects" => Eat(() => new byte[1 << 20]),
        "eats-memory" => Eat(TouchedMemory),
        "floods-output" => Then(Flood),
        "spawns" => Then(() => Process.Start("/bin/sh", ["-c", $"(setsid sleep {unit} &) ; exec sleep {unit}"])),
        "writes-a-file" => Then(() => File.WriteAllText(Path.Combine("/tmp", unit), "written")),
        "calls-out" => Then(() => new TcpClient().Connect(IPAddress.Loopback, int.Parse(unit, CultureInfo.InvariantCulture))),
        "looks-around" => string.Join(' ', Environment.GetEnvironmentVariables().Keys.Cast<string>().Order(StringComparer.Ordinal)),
        _ => Then(() => Thread.Sleep(Timeout.Infinite)),
    };

    private static string Then(Action act)
    {
        act();
        return "done";
    }

    private static int Deeper(int depth) => depth < 0 ? 0 : Deeper(depth + 1) + depth;

    private static void ThrowElsewhere()
    {
        new Thread(() => throw new InvalidOperationException("nobody catches this")).Start();
        Thread.Sleep(Timeout.Infinite);
    }

    private static string Eat(Func<object> bite)
    {
        var kept = new List<object>();
        while (true)
            kept.Add(bite());
    }

    private static object TouchedMemory()
    {
        const int Size = 16 << 20;
        var memory = Marshal.AllocHGlobal(Size);
        for (var at = 0; at < Size; at += 4096)
            Marshal.WriteByte(memory, at, 1);
        return memory;
    }

    private static void Flood()
    {
        using var output = Console.OpenStandardOutput();
        var noise = new byte[4096];
        Array.Fill(noise, (byte)'x');
        while (true)
            output.Write(noise);
    }
}
