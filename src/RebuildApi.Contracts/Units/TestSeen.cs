namespace RebuildApi.Contracts;

/// <summary>A test of the family that was tried on a unit. Never edited; of several results of one test the newest counts.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Test">Id of the family's test.</param>
/// <param name="Shown">Whether it showed.</param>
/// <param name="Taken">How, by whom and when.</param>
public sealed record TestSeen(string Id, string Test, bool Shown, Taken Taken);
