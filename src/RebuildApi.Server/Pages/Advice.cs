using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>Which ring, shim or cut brings a clearance right, in words.</summary>
public sealed class Advice(Spoken named, PageWords words)
{
    private const int MostCuts = 3;

    /// <summary>One line for the piece, or one for each cut that would do; nothing where there is nothing to say.</summary>
    public IEnumerable<string> Of(RingAnswer? ring) => ring switch
    {
        null or { Outcome: RingOutcome.NotAssessed } => [],
        { Outcome: RingOutcome.Fits, Ranked: [var best, ..] } => [Piece(best)],
        _ => ring.Cuts.Take(MostCuts).Select(Cut).Prepend(words["unit.no-ring"]),
    };

    private string Piece(RingChoice best) => words["unit.ring", ("members", string.Join(" + ", best.Members)), ("thickness", Shown.Of(new Exact(best.Thickness)))];

    private string Cut(CutAdvice c) => words["unit.cut",
        ("operation", named.Operation(c.Operation)), ("at", named.Subject(c.At.ToString())), ("cut", Shown.Of(new Exact(c.ToEnter))), ("permission", words["may." + Kebab.Of(c.Permission)])];
}
