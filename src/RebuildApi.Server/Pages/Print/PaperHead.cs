using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>What stands on every paper of a gearbox: which it is, by whose rules it was judged, and what stands before anything said.</summary>
public sealed class PaperHead(Judged judged, DateTimeOffset now, PageWords w)
{
    private static readonly Display Metric = new(Inches: false, AsSent: false);

    /// <summary>Which gearbox, whose, made when.</summary>
    public Prose Gearbox => new(string.Join(" ", new[]
    {
        w["record.of", ("tag", judged.File.Unit.Tag), ("family", judged.Family.Family.Name.In(w.Language)), ("version", judged.File.Unit.Family.SemVer), ("when", Minute(now))],
        judged.File.Unit.Customer is { } customer ? w["record.customer", ("customer", customer)] : "",
    }.Where(s => s.Length > 0)));

    /// <summary>Whose rules, exactly.</summary>
    public Prose Rules => new(
        w["record.rules", ("hash", judged.Answers.Rules.DeclarationSha256[..12]), ("engine", judged.Answers.Rules.Engine),
            ("policy", judged.View.Snapshot.Policy.Version), ("inputs", judged.View.InputsSha256[..12])] + Plugin,
        IsSoft: true);

    private string Plugin => judged.Answers.Rules.Plugin is { } p ? " " + w["record.plugin", ("id", p.Id), ("version", p.Version), ("hash", p.Sha256[..Math.Min(12, p.Sha256.Length)])] : "";

    /// <summary>The cautions.</summary>
    public Bullets Cautions => new(Wire.Cautions.Of(judged.Family, Metric));

    /// <summary>A minute, UTC.</summary>
    public static string Minute(DateTimeOffset time) => time.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A day.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>Lines to sign on.</summary>
    public Signatures Sign(params string[] keys) => new([.. keys.Select(k => w[k])]);

    /// <summary>Columns by the keys of their headings.</summary>
    public static ImmutableArray<Column> Columns(PageWords w, params (string Key, double Share)[] columns) => [.. columns.Select(c => new Column(w[c.Key], c.Share))];
}
