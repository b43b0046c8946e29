using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using RebuildApi.Contracts;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>What a unit is built of, as a hash: it changes as soon as anything is fitted, taken out or reworked.</summary>
public static class Build
{
    /// <summary>The hash, in lower-case hexadecimal. What was found and is to go back counts as well as what was fitted.</summary>
    public static string Sha256(UnitFile file)
    {
        var revisions = file.Components.GroupBy(c => c.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Max(c => c.Revision), StringComparer.Ordinal);
        var lines = file.Placements.Select(p => Line(p, revisions.GetValueOrDefault(p.Component))).Order(StringComparer.Ordinal);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', lines))));
    }

    private static string Line(Placement p, int revision) =>
        string.Create(CultureInfo.InvariantCulture, $"{p.Position}/{p.Index}/{p.Role}/{p.Facing}/{p.Component}/{revision}");
}
