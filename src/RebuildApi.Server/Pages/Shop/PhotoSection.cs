using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>The photos and documents of a gearbox, each a link: a page comes in one answer, whatever they weigh.</summary>
public sealed class PhotoSection(UnitFile file, ImmutableArray<Attachment> kept, Spoken named, PageWords w)
{
    /// <summary>The section; nothing when there is none.</summary>
    public string Write() => kept.IsEmpty ? "" : $"<h2>{Page.Safe(w["unit.photos"])}</h2><ul>{string.Concat(kept.Select(One))}</ul>";

    private string One(Attachment a) =>
        $"<li><a href=\"/v1/units/{file.Unit.Id}/attachments/{a.Id}\">{Page.Safe(About(a))}</a> <span class=\"soft\">{Page.Safe($"{a.Person}, {PaperHead.Minute(a.Time)}, {Size(a.Bytes)}")}</span></li>\n";

    private string About(Attachment a)
    {
        var part = file.Findings.FirstOrDefault(f => f.Id == a.Finding)?.Component ?? file.Measurements.FirstOrDefault(m => m.Id == a.Measurement)?.Component;
        var place = file.Placements.FirstOrDefault(p => p.Component == part)?.Position;
        return string.Join(": ", new[] { place is null ? w["unit.photo-whole"] : named.Subject(place), a.Note }.OfType<string>());
    }

    /// <summary>A size in mebibytes (IEC 80000-13), one place.</summary>
    public static string Size(long bytes) => (bytes / 1048576.0).ToString("0.#", CultureInfo.InvariantCulture) + " MiB";
}
