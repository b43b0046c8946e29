using System.Collections.Immutable;
using System.Text.Json;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost.Loading;

/// <summary>What a plug-in declared, made anew from bytes: none of it is the plug-in's own.</summary>
/// <param name="Manifest">Who it is.</param>
/// <param name="Families">Its families, not checked yet.</param>
/// <param name="Reads">Whether it reads family files.</param>
internal sealed record Declaration(PluginManifest Manifest, ImmutableArray<Family> Families, bool Reads)
{
    /// <summary>Reads what a plug-in declared.</summary>
    /// <exception cref="PluginFault">It is not complete, or not the plug-in of that folder.</exception>
    public static Declaration Read(DeclaredBytes bytes, string id)
    {
        try
        {
            var manifest = JsonSerializer.Deserialize(bytes.Manifest, ContractJson.Default.PluginManifest)
                ?? throw PluginFault.Invalid("It does not say who it is.");
            if (manifest.Id != id)
                throw PluginFault.Refused($"It calls itself {PluginFault.Tame(manifest.Id)} but lies in the folder {id}.");
            return new Declaration(manifest, [.. bytes.Families.Select(Family)], bytes.Reads);
        }
        catch (JsonException e)
        {
            throw PluginFault.Invalid("What it declares is not complete: " + PluginFault.Tame(e.Message));
        }
    }

    private static Family Family(byte[] bytes) => JsonSerializer.Deserialize(bytes, ContractJson.Default.Family)
        ?? throw PluginFault.Invalid("One of its families is nothing at all.");
}
