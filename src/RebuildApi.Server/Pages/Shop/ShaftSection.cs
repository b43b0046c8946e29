using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>Each shaft of a gearbox laid out: drawn with its neighbours and pairings, and in words what does not simply hold.</summary>
public sealed class ShaftSection(Judged judged, Spoken named, PageWords w)
{
    private readonly ImmutableArray<(PairingVerdict Verdict, ImmutableArray<string> At)> _pairings =
        [.. judged.Answers.Pairings.Select(p => (p, Positions(p, judged)))];

    /// <summary>All shafts.</summary>
    public string Write() => string.Concat(judged.Answers.Parts.GroupBy(p => judged.Family.Positions[p.Position].Group).Select(g => Shaft(g.Key, [.. g])));

    private string Shaft(string name, ImmutableArray<PartAnswer> parts)
    {
        var bonds = _pairings.Where(p => parts.Count(x => p.At.Contains(x.Position)) > 1).Select(p => new ShaftDrawing.Bond(p.At, p.Verdict.Outcome)).ToImmutableArray();
        return $"""
            <section class="card"><h3>{Page.Safe(name)}</h3><figure>{new ShaftDrawing(name, parts, bonds, named, w).Draw().Inside}</figure>
            <ol class="shaft">{string.Concat(parts.Select(Part))}</ol></section>
            """;
    }

    private string Part(PartAnswer part)
    {
        var open = _pairings.Where(p => p.At.Contains(part.Position) && p.Verdict.Outcome is Compatibility.Incompatible or Compatibility.Conditional && p.At.Contains(part.Position));
        return $"<li>{Page.Safe(named.Place(part.Position, part.Index))} {w.Outcome(part.Outcome)} <span class=\"soft\">{Page.Safe(w["d." + Kebab.Of(part.Disposition)])}</span>{string.Concat(open.Take(4).Select(p => Pairing(p.Verdict, p.At, part.Position)))}</li>\n";
    }

    private string Pairing(PairingVerdict pairing, ImmutableArray<string> at, string here)
    {
        var neighbours = string.Join(", ", at.Where(p => p != here).Select(named.Subject));
        var cure = pairing.Outcome == Compatibility.Incompatible && pairing.Cures.FirstOrDefault() is { } c ? " " + w["unit.cures", ("cure", named.Words(c.Text))] : "";
        return $"<br>{w.Outcome(pairing.Outcome)} {Page.Safe(w["unit.with", ("parts", neighbours)])}{Page.Safe(cure)}";
    }

    // A role may name an address of the part: the position is what stands before the slash.
    private static ImmutableArray<string> Positions(PairingVerdict pairing, Judged judged) => judged.Family.Pairings.GetValueOrDefault(pairing.Rule) is { } rule
        ? [.. rule.Roles.Values.Select(r => r.Split('/')[0]).Distinct(StringComparer.Ordinal)]
        : [];
}
