namespace RebuildApi.Contracts;

/// <summary>A test of the family that was tried on a unit. Never edited, only superseded.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Test">Id of the family's test.</param>
/// <param name="Shown">Whether it showed.</param>
/// <param name="Taken">How, by whom and when.</param>
/// <param name="Supersedes">The result it corrects, if any.</param>
public sealed record TestSeen(string Id, string Test, bool Shown, Taken Taken, string? Supersedes);
