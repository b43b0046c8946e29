using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>How worn parts come in, as a histogram with the service limits; as many classes as Sturges says (JASA 21, 1926): 1 + log2 n.</summary>
public sealed class WearDrawing(string title, ImmutableArray<double> values, Limits? service, Dimension dimension, PageWords words)
{
    private const double Width = 720;
    private const double Height = 300;
    private const double Base = Height - 40;
    private static readonly Display Show = new(Inches: false, AsSent: false);

    /// <summary>The drawing.</summary>
    public Drawn Draw()
    {
        var sketch = new Sketch(Width, title);
        sketch.Text(10, 20, title, size: 15);
        var along = Scale.Around([.. values, .. new[] { service?.Low?.InSi, service?.High?.InSi }.OfType<double>()], 30, Width - 30);
        Bars(sketch, along);
        sketch.Line(20, Base, Width - 20, Base);
        Limit(sketch, along, service?.Low);
        Limit(sketch, along, service?.High);
        return new Drawn(sketch, Height);
    }

    private void Bars(Sketch sketch, Scale along)
    {
        var (low, high) = (values.Min(), values.Max());
        var count = 1 + (int)Math.Ceiling(Math.Log2(values.Length));
        var step = high > low ? (high - low) / count : Math.Max(Math.Abs(high) * 1e-4, 1e-6);
        var classes = values.GroupBy(v => Math.Min(count - 1, (int)((v - low) / step))).ToDictionary(g => g.Key, g => g.Count());
        var most = classes.Values.Max();
        foreach (var (at, hits) in classes.OrderBy(c => c.Key))
        {
            var (x1, x2) = (along.At(low + at * step), along.At(low + (at + 1) * step));
            var h = (Base - 60) * hits / most;
            sketch.Box(x1, Base - h, x2 - x1, h, Sketch.Part, 0.35);
            sketch.Text((x1 + x2) / 2, Base - h - 5, hits.ToString(CultureInfo.InvariantCulture), "middle", 12);
        }

        sketch.Text(along.At(low), Height - 22, Shown.Of(Show.Si(low, dimension)), "middle", 12);
        if (along.At(high) - along.At(low) > 90)
            sketch.Text(along.At(high), Height - 22, Shown.Of(Show.Si(high, dimension)), "middle", 12);
    }

    private void Limit(Sketch sketch, Scale along, Quantity? end)
    {
        if (end is null)
            return;
        sketch.Line(along.At(end.InSi), 36, along.At(end.InSi), Base, 2, dashed: true);
        sketch.Text(Math.Clamp(along.At(end.InSi), 70, Width - 70), Height - 5, $"{words["draw.limit"]} {Shown.Of(end)}", "middle", 12);
    }
}
