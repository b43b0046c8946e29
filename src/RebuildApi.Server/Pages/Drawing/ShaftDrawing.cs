using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Server.Pages;

/// <summary>
/// A shaft laid out: its parts one below the other in order, each with the sign of its outcome, and beside them a bracket from each part to each other one that
/// it must run with, with the sign of the pairing; what it must run with on another shaft stands in words.
/// </summary>
public sealed class ShaftDrawing(string shaft, ImmutableArray<PartAnswer> parts, ImmutableArray<ShaftDrawing.Bond> bonds, Spoken named, PageWords words)
{
    private const double Width = 720;
    private const double RowHeight = 30;
    private const double Names = 320;
    private const double Lane = 22;
    private const int MostLanes = 16;

    private readonly Sketch _sketch = new(Width, words["draw.shaft", ("shaft", shaft)]);

    /// <summary>A pairing and the positions between which it must hold.</summary>
    /// <param name="Positions">The positions.</param>
    /// <param name="Outcome">Whether it holds.</param>
    public sealed record Bond(ImmutableArray<string> Positions, Compatibility Outcome);

    /// <summary>The drawing.</summary>
    public Drawn Draw()
    {
        _sketch.Line(30, 6, 30, 6 + parts.Length * RowHeight, 5);
        for (var i = 0; i < parts.Length; i++)
        {
            _sketch.Box(8, Top(i), Names - 16, RowHeight - 6, "#ffffff", 0, Outline.Whole);
            _sketch.Mark(24, Middle(i), Sketch.Of(parts[i].Outcome));
            _sketch.Text(42, Middle(i) + 4, Short(named.Place(parts[i].Position, parts[i].Index), 38), size: 12.5);
        }

        Brackets();
        return new Drawn(_sketch, 12 + parts.Length * RowHeight);
    }

    private void Brackets()
    {
        var lanes = new List<double>();
        foreach (var (from, to, outcome) in bonds.SelectMany(Ends).OrderBy(e => e.To - e.From).ThenBy(e => e.From))
        {
            var lane = lanes.FindIndex(end => end < Middle(from));
            lane = lane < 0 ? Add(lanes) : lane;
            lanes[lane] = Middle(to) + 4;
            if (lane < MostLanes)
                Bracket(Middle(from) + 3, Middle(to) - 3, Names + lane * Lane, SignOf(outcome));
        }
    }

    private void Bracket(double top, double bottom, double x, Sign sign)
    {
        _sketch.Line(Names - 8, top, x + 8, top);
        _sketch.Line(Names - 8, bottom, x + 8, bottom);
        _sketch.Line(x + 8, top, x + 8, bottom, 1.5, sign != Sign.Dot);
        _sketch.Mark(x + 8, (top + bottom) / 2, sign);
    }

    // A pairing of three is drawn as two neighbours each time: from one to the next along the shaft.
    private IEnumerable<(int From, int To, Compatibility Outcome)> Ends(Bond bond)
    {
        var rows = bond.Positions.Select(RowOf).Where(r => r >= 0).Order().ToArray();
        return rows.Zip(rows.Skip(1), (a, b) => (a, b, bond.Outcome));
    }

    private int RowOf(string position)
    {
        for (var i = 0; i < parts.Length; i++)
        {
            if (parts[i].Position == position)
                return i;
        }

        return -1;
    }

    private static int Add(List<double> lanes)
    {
        lanes.Add(0);
        return lanes.Count - 1;
    }

    private static Sign SignOf(Compatibility outcome) => outcome switch
    {
        Compatibility.Compatible => Sign.Dot,
        Compatibility.Incompatible => Sign.Cross,
        Compatibility.Conditional => Sign.Diamond,
        _ => Sign.Ring,
    };

    private static double Top(int row) => 6 + row * RowHeight + 3;

    private static double Middle(int row) => 6 + row * RowHeight + RowHeight / 2;

    private static string Short(string text, int most) => text.Length <= most ? text : text[..(most - 1)] + "…";
}
