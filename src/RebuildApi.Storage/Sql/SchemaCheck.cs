namespace RebuildApi.Storage.Sql;

/// <summary>Whether this program may work on a schema.</summary>
internal static class SchemaCheck
{
    /// <summary>Refuses one that is newer than this program, and one that is older when it can't be brought up to date.</summary>
    /// <exception cref="StorageUnavailableException"><c>newer-schema</c> or <c>older-schema</c>.</exception>
    public static void Require(int stands, int newest, bool readOnly, string wayBack)
    {
        if (stands > newest)
            throw new StorageUnavailableException("newer-schema", Words(stands, newest, wayBack));
        if (readOnly && stands < newest)
            throw new StorageUnavailableException("older-schema", Words(stands, newest, "Open it for writing once, so that it is brought up to date."));
    }

    private static string Words(int stands, int newest, string cure) =>
        FormattableString.Invariant($"The database is at schema {stands}; this program knows up to {newest}. {cure}");
}
