using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Statistics;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>Single values in the order in which the units came in, between the limits of a control chart (Shewhart; ISO 7870-2).</summary>
public sealed class ChartDrawing(string title, ImmutableArray<double> values, ControlChart chart, Dimension dimension, PageWords words)
{
    private const double Width = 720;
    private const double Height = 300;
    private static readonly Display Show = new(Inches: false, AsSent: false);

    /// <summary>The drawing.</summary>
    public Drawn Draw()
    {
        var sketch = new Sketch(Width, title);
        sketch.Text(10, 20, title, size: 15);
        var up = Scale.Around([.. values, chart.Level.Low, chart.Level.High], Height - 30, 40);
        foreach (var (at, word, dashed) in new[] { (chart.Level.High, words["draw.limit"], true), (chart.Level.Centre, words["draw.mean"], false), (chart.Level.Low, words["draw.limit"], true) })
        {
            sketch.Line(60, up.At(at), Width - 150, up.At(at), dashed: dashed);
            sketch.Text(Width - 145, up.At(at) + 4, $"{word} {Shown.Of(Show.Si(at, dimension))}", size: 12);
        }

        Points(sketch, up);
        return new Drawn(sketch, Height);
    }

    private void Points(Sketch sketch, Scale up)
    {
        var along = new Scale(0, Math.Max(1, values.Length - 1), 70, Width - 160);
        for (var i = 0; i < values.Length; i++)
        {
            if (i > 0)
                sketch.Line(along.At(i - 1), up.At(values[i - 1]), along.At(i), up.At(values[i]));
            sketch.Mark(along.At(i), up.At(values[i]), chart.Level.IsBeyond(values[i]) ? Sign.Diamond : Sign.Dot);
        }

        sketch.Text(70, Height - 8, "1", "middle", 12);
        sketch.Text(along.At(values.Length - 1), Height - 8, values.Length.ToString(CultureInfo.InvariantCulture), "middle", 12);
    }
}
