using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>
/// The teardown sheet as the bench page's script takes it, each kind once, under short names so that the page stays small: <c>s</c> subject,
/// <c>n</c> name, <c>g</c> group, <c>k</c> kind or least count of readings, <c>d</c> damage classes, <c>r</c> rows, <c>w</c> what, <c>i</c> id,
/// <c>q</c> question, <c>c</c> choices, <c>u</c> unit, <c>l</c> limits that differ at the place, <c>p</c> pieces.
/// </summary>
public sealed class BenchSheet(FamilyIndex family, PageWords words)
{
    private static readonly Display Show = new(Inches: false, AsSent: false);

    /// <summary>What is looked at and read on each kind.</summary>
    public object Kinds => family.Family.Kinds.ToDictionary(k => k.Id, k => new { d = k.DamageClasses, r = k.Attributes.Select(Attribute).Concat(k.Characteristics.Where(c => c.DerivedFrom is null).Select(Reading)) });

    /// <summary>The places, in stripping order.</summary>
    public IEnumerable<object> Parts => family.Family.Positions.OrderBy(p => p.StripOrder).ThenBy(p => p.Id, StringComparer.Ordinal)
        .SelectMany(p => Enumerable.Range(1, p.Quantity).Select(i => (object)new
        {
            s = Subjects.Of(p.Id, i),
            n = Named(p.Name.In(words.Language), i, p.Quantity),
            g = p.Group,
            k = p.Kind,
            l = p.Overrides.Where(o => o.Service is not null).ToDictionary(o => o.Characteristic, o => new[] { Number(o.Service!.Low), Number(o.Service.High) }),
        }));

    /// <summary>The clearances that are tried.</summary>
    public IEnumerable<object> Trials => family.Family.Loops.Where(l => l.Trial != TrialMethod.None).Select(l => new
    {
        i = l.Id,
        n = l.Name.In(words.Language),
        g = l.Group,
        w = Shown.Of(LimitsWire.From(l.Window, Show)),
        p = l.Terms.Select(t => t.Of).OfType<OfSeries>().Select(Piece),
    });

    /// <summary>What is tried while the gearbox is whole.</summary>
    public IEnumerable<object> Whole => (family.Family.Tests ?? []).Where(t => t.Stage == TestStage.BeforeStripDown).Select(t => new { i = t.Id, n = t.Name.In(words.Language) });

    /// <summary>Each class of damage that is looked for: in plain words, and as the standard calls it.</summary>
    public IReadOnlyDictionary<string, string?[]> Damage => family.Family.Kinds.SelectMany(k => k.DamageClasses).Distinct(StringComparer.Ordinal)
        .ToDictionary(d => d, d => new[] { words.Damage(d), words.DamageClass(d) }, StringComparer.Ordinal);

    private object Attribute(AttributeDefinition a) => new { w = "a", i = a.Id, q = a.Name.In(words.Language), c = a.Values.Select(v => new[] { v.Id, v.Name.In(words.Language) }) };

    private object Reading(Characteristic c) => new
    {
        w = "r",
        i = c.Id,
        q = c.Name.In(words.Language),
        u = Show.Si(0, c.Dimension).Unit,
        k = c.MinimumReadings,
        lo = Number(c.Service?.Low),
        hi = Number(c.Service?.High),
    };

    private object Piece(OfSeries series) => new object[]
    {
        series.Position,
        family.Series[series.Series].Members.Select(m => new[] { m.Id, Shown.Of(new Exact(m.Thickness)) }),
        family.Positions.TryGetValue(series.Position, out var p) ? p.Name.In(words.Language) : series.Position,
    };

    private static string? Number(Quantity? end) => end is null ? null : Show.Of(end).Value.Text;

    private static string Named(string name, int index, int of) =>
        of == 1 ? name : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{name} {index}/{of}");
}
