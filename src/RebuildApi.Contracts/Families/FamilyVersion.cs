namespace RebuildApi.Contracts;

/// <summary>Which family, and which edition of its rules.</summary>
/// <param name="Id">Lower case, digits and hyphens: <c>brackenmere-4</c>.</param>
/// <param name="SemVer">Semantic version of the rules: <c>1.0.0</c>.</param>
public sealed record FamilyVersion(string Id, string SemVer);
