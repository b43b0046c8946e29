using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Diagnosis;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;

namespace RebuildApi.Benchmarks;

/// <summary>
/// Times whole diagnoses of the shipped four-speed: ranking, ranges, weights and next checks, from a complaint alone and from a gearbox that was looked
/// all over. The shortest of many runs counts, since anything else that runs on the machine only lengthens them.
/// </summary>
internal static class DiagnosisBenchmark
{
    private const int Runs = 400;

    public static void Run(TextWriter output)
    {
        var family = new Brackenmere4.BrackenmerePlugin().Declare().Single();
        var network = new CauseNetwork(family);
        var complaint = Seen(network, family, soundAllOver: false);
        var apart = Seen(network, family, soundAllOver: true);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"diagnosis: {network.Causes.Length} causes, {network.Signs.Length} signs, {network.Tests.Length} tests"));
        Print("from the complaint alone", network, complaint, output);
        Print("looked all over", network, apart, output);
    }

    private static void Print(string what, CauseNetwork network, ImmutableArray<ClueSeen> seen, TextWriter output)
    {
        var shortest = double.MaxValue;
        for (var i = 0; i < Runs; i++)
        {
            var start = Stopwatch.GetTimestamp();
            Diagnoser.Diagnose(network, new DiagnosisQuestion(seen));
            shortest = Math.Min(shortest, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"diagnosis, {what}: {seen.Length} clues, {shortest:0.00} ms (wanted: under 5)"));
    }

    private static ImmutableArray<ClueSeen> Seen(CauseNetwork network, Family family, bool soundAllOver)
    {
        var builder = SnapshotBuilder.Complete(family);
        if (soundAllOver)
            builder = builder.Snapshot.Components.Aggregate(builder, (b, c) => b.Sees(c.Id, new Sound()));
        var snapshot = builder.Sees("third-gear", new AttributeSeen("dog.drive-flank", "leaned")).Snapshot with
        {
            Complaint = [new SymptomSeen("jumps-out-under-load", "third"), new SymptomSeen("noise-gone-in-direct", null), new SymptomSeen("clash", "third")],
        };
        return ClueBook.Of(network, new UnitView(snapshot, new FamilyIndex(family)), ImmutableDictionary<string, Standing>.Empty);
    }
}
