namespace RebuildApi.Storage.Sql;

/// <summary>Carries through several changes with one commit.</summary>
internal interface IGroupWriter : IDisposable
{
    /// <summary>Runs and commits a group, and answers each of its callers.</summary>
    /// <returns>The last sequence number when the group was committed, else null.</returns>
    long? Run(IReadOnlyList<PendingChange> group);
}
