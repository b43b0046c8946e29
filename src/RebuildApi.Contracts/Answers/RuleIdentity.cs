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
    string Rule);
