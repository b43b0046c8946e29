
namespace RebuildApi.Storage.Sql;

/// <summary>Changes by the one writer that add nothing to the chain: the probe of the disk, and when tokens were last used.</summary>
internal static class Unrecorded
{
    public static WriteRequest Request(string operation) => new("local", operation, null, "", DryRun: false);

    public static StoredAnswer Write(IWriteSession session, Action<WriteSession> work)
    {
        work((WriteSession)session);
        return StoredAnswer.Nothing;
    }
}
