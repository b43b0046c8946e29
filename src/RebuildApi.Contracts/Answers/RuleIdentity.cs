namespace RebuildApi.Contracts;

/// <summary>Whose rules made an answer, exactly enough to make it again.</summary>
/// <param name="Family">Family and edition.</param>
/// <param name="DeclarationSha256">Hash of the family's canonical declaration (RFC 8785), lower-case hex.</param>
/// <param name="HookSha256">Hash of the assembly whose code took part, or none.</param>
/// <param name="Contract">Version of the contract.</param>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Rule">The rule: a characteristic, clearance, pairing or policy.</param>
public sealed record RuleIdentity(
    FamilyVersion Family,
    string DeclarationSha256,
    string? HookSha256,
    string Contract,
    string Engine,
    string Rule)
{
    /// <summary>The plug-in or family file that brought the family; none when it came from neither, as in a calculation. Since contract 1.1.</summary>
    public PluginIdentity? Plugin { get; init; }
}

/// <summary>A plug-in, or a family file, exactly enough to tell it from every other edition of it. Since contract 1.1.</summary>
/// <param name="Id">Its id: the name of its folder, or of the file.</param>
/// <param name="Version">The version that it says it has; that of the family when it is a file.</param>
/// <param name="Sha256">The hash that was approved: of all its assemblies together, or of the file; lower-case hex.</param>
public sealed record PluginIdentity(string Id, string Version, string Sha256);
