using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost.Catalog;

/// <summary>
/// Checks families. What was found in one whose worked cases were run is kept by the hash of what was checked and the edition of the checks, so that running
/// them costs a start only once.
/// </summary>
internal sealed class FamilyChecking(PluginHostOptions options)
{
    /// <summary>A family whose worked cases were run when it was built.</summary>
    public ImmutableArray<Diagnostic> Proven(Family family) => options.CheckFamily(family);

    /// <summary>A family whose worked cases nobody has run yet.</summary>
    public ImmutableArray<Diagnostic> Unproven(Family family)
    {
        var check = options.CheckUnproven ?? options.CheckFamily;
        if (options.DeclarationFolder is not { } folder || options.CheckEdition is not { } edition)
            return check(family);
        var path = Path.Combine(folder, KeyOf(family, edition) + ".checked");
        if (Kept(path) is { } kept)
            return kept;
        var found = check(family);
        Keep(path, found);
        return found;
    }

    private static string KeyOf(Family family, string edition) => Convert.ToHexStringLower(
        SHA256.HashData([.. Encoding.UTF8.GetBytes(edition + "\n"), .. JsonSerializer.SerializeToUtf8Bytes(family, ContractJson.Default.Family)]));

    private static ImmutableArray<Diagnostic>? Kept(string path)
    {
        try
        {
            using var stream = File.OpenRead(path);
            return JsonSerializer.Deserialize(stream, ContractJson.Default.ReadResult) is { Diagnostics.IsDefault: false } read ? read.Diagnostics : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            // Not there, or not whole: it is checked again.
            return null;
        }
    }

    private static void Keep(string path, ImmutableArray<Diagnostic> found)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            var half = path + "." + Path.GetRandomFileName();
            File.WriteAllBytes(half, JsonSerializer.SerializeToUtf8Bytes(new ReadResult(null, found), ContractJson.Default.ReadResult));
            File.Move(half, path, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It only saves time; without it the family is checked again at the next start.
        }
    }
}
