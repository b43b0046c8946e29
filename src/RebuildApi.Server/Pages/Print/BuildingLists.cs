using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>What is tightened to what and what is filled in, as it is printed: in both units, with where the numbers come from and what goes before them.</summary>
public sealed class BuildingLists(FamilyIndex family, PageWords w)
{
    private static readonly Display Metric = new(Inches: false, AsSent: false);
    private readonly Spoken _named = new(family, w.Language);

    /// <summary>Its blocks; none for a family that declares neither.</summary>
    public IEnumerable<Block> Write() => [.. Tightening(), .. Oil()];

    private IEnumerable<Block> Tightening()
    {
        var all = family.Family.Fasteners ?? [];
        if (all.Count == 0)
            yield break;
        yield return new Heading(w["assembly.tightening"]);
        yield return new Prose(w["assembly.maker-first", ("source", Sources(all.Select(f => f.Torque.Source)))]);
        yield return new Grid(
            PaperHead.Columns(w, ("assembly.fastener", 2.2), ("assembly.holds-what", 2.2), ("assembly.torque", 2.4), ("assembly.how", 3.4), ("assembly.done", 1.2)),
            [.. all.Select(f => Row.Of(
                $"{f.Quantity.ToString(CultureInfo.InvariantCulture)} × {_named.Words(f.Name)}", Places(f.Positions),
                Both(LimitsWire.In(f.Torque, "N·m")!, LimitsWire.In(f.Torque, "ft·lbf")!), Said(How(f)), "☐"))], w["record.none"]);
    }

    private IEnumerable<Block> Oil()
    {
        var all = family.Family.Lubricants ?? [];
        if (all.Count == 0)
            yield break;
        yield return new Heading(w["assembly.lubricants"]);
        yield return new Prose(w["assembly.oil-maker-first", ("source", Sources(all.Select(l => l.Quantity.Source)))]);
        yield return new Grid(
            PaperHead.Columns(w, ("record.part", 1.6), ("assembly.grade", 2.6), ("assembly.quantity", 2), ("assembly.level", 4), ("assembly.done", 1.2)),
            [.. all.Select(l => Row.Of(
                _named.Words(l.Name), _named.Words(l.Grade), Both(LimitsWire.In(l.Quantity, "L")!, LimitsWire.In(l.Quantity, "US qt")!), Said(Level(l)), "☐"))], w["record.none"]);
    }

    private IEnumerable<string?> How(Fastener f) =>
    [
        Maybe(f.Thread), Maybe(f.Sequence), f.Angle is { } angle ? w["assembly.then-turn", ("angle", Shown.Of(LimitsWire.From(angle, Metric)))] : null, Maybe(f.Renewal),
        f.Criticality == Criticality.SafetyCritical ? w["assembly.safety"] : null,
    ];

    private IEnumerable<string?> Level(Lubricant l) =>
    [
        _named.Words(l.Level),
        l.Temperature is { } at ? w["assembly.level-at", ("temperature", Both(LimitsWire.In(at, "°C")!, LimitsWire.In(at, "°F")!))] : null, Maybe(l.Linings),
    ];

    private string? Maybe(Text? text) => text is null ? null : _named.Words(text);

    private static string Said(IEnumerable<string?> words) => string.Join("\n", words.OfType<string>());

    private string Places(IEnumerable<string> positions) => string.Join(", ", positions.Select(_named.Subject));

    private string Sources(IEnumerable<Source> sources) =>
        string.Join("; ", sources.Distinct().Select(s => $"{s.Citation} ({w["source." + Kebab.Of(s.Kind)]})"));

    private static string Both(LimitsWire own, LimitsWire other) => $"{Shown.Of(own)} ({Shown.Of(Inward(other))})";

    /// <summary>To a tenth, never beyond the limits; as they are where nothing would be left between them.</summary>
    private static LimitsWire Inward(LimitsWire limits)
    {
        var (low, high) = (Tenth(limits.Low, Math.Ceiling), Tenth(limits.High, Math.Floor));
        return low is null || high is null || Value(low) <= Value(high) ? limits with { Low = low, High = high } : limits;
    }

    private static QuantityWire? Tenth(QuantityWire? end, Func<decimal, decimal> round) =>
        end is null ? null : end with { Value = new((round(Value(end) * 10) / 10).ToString("0.0", CultureInfo.InvariantCulture)) };

    private static decimal Value(QuantityWire quantity) => decimal.Parse(quantity.Value.Text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
