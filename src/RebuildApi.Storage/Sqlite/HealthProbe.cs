using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Sqlite;

/// <summary>A change that needs room on the disk and leaves nothing behind.</summary>
internal static class HealthProbe
{
    public static readonly WriteRequest Request = new("local", "health", null, "", DryRun: false);

    public static StoredAnswer Write(IWriteSession session)
    {
        ((WriteSession)session).Probe();
        return StoredAnswer.Nothing;
    }
}
