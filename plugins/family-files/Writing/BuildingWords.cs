using FamilyFiles.Yaml;
using static FamilyFiles.Writing.Build;

namespace FamilyFiles.Writing;

/// <summary>Writes what is tightened and filled in, and what gates want.</summary>
internal sealed class BuildingWords(PartWords parts)
{
    public MapNode Fastener(Fastener f) => Map(
        ("name", Words(f.Name, "fastener." + f.Id)),
        ("holds", Names(f.Positions)),
        ("quantity", f.Quantity == 1 ? null : Whole(f.Quantity)),
        ("torque", parts.Limits(f.Torque)),
        ("then-turn", parts.Limits(f.Angle)),
        ("matters", Word(f.Criticality, Criticality.Ordinary)),
        ("thread", WordsIf(f.Thread, $"fastener.{f.Id}.thread")),
        ("renewal", WordsIf(f.Renewal, $"fastener.{f.Id}.renewal")),
        ("sequence", WordsIf(f.Sequence, $"fastener.{f.Id}.sequence")));

    public MapNode Lubricant(Lubricant l) => Map(
        ("name", Words(l.Name, "lubricant." + l.Id)),
        ("grade", Words(l.Grade, $"lubricant.{l.Id}.grade")),
        ("positions", Names(l.Positions)),
        ("quantity", parts.Limits(l.Quantity)),
        ("level", Words(l.Level, $"lubricant.{l.Id}.level")),
        ("at", parts.Limits(l.Temperature)),
        ("linings", WordsIf(l.Linings, $"lubricant.{l.Id}.linings")));

    public static MapNode Gate(FamilyGate g) => Map(
        ("name", Words(g.Name, "gate." + g.Id)),
        ("before-leaving", Word(g.Stage)),
        ("read", SayIf((g.Demand as LoopRead)?.Loop)),
        ("tried", SayIf((g.Demand as TestTried)?.Test)),
        ("signed", WordsIf((g.Demand as CheckSigned)?.How, $"gate.{g.Id}.how")),
        ("reason", Words(g.Reason, $"gate.{g.Id}.reason")),
        ("matters", Word(g.Criticality, Criticality.Ordinary)),
        ("exception", g.MayExcept ? Say("true") : null));
}
