using Microsoft.Data.Sqlite;

namespace RebuildApi.Storage.Sqlite;

/// <summary>What the engine's result codes mean to a shop (sqlite.org, "Result and Error Codes").</summary>
internal static class SqliteFaults
{
    private const int Permission = 3;
    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int IoError = 10;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int NotADatabase = 26;

    /// <summary>Whether another connection holds what is needed, so that waiting helps.</summary>
    public static bool IsBusy(SqliteException fault) => fault.SqliteErrorCode is Busy or Locked;

    /// <summary>The fault in the store's words; the exception itself when it is not the file's fault.</summary>
    public static Exception Translate(Exception exception) => exception is SqliteException fault ? Translate(fault) : exception;

    private static Exception Translate(SqliteException fault) => fault.SqliteErrorCode switch
    {
        Full => Unavailable("disk-full", "The disk, or the database's quota, is full. Make room; nothing acknowledged is lost.", fault),
        ReadOnly or Permission => Unavailable("read-only", "The database can only be read. Check the file's and folder's permissions.", fault),
        Busy or Locked => Unavailable("locked", "Another program holds the database. Close it, or try again.", fault),
        Corrupt or NotADatabase => Unavailable("damaged", "The database is damaged. Stop the service and restore the last verified backup.", fault),
        IoError => Unavailable("io-error", "The disk refused to read or write. Check it before going on.", fault),
        CannotOpen => Unavailable("io-error", "The database can't be opened. Check that its folder exists and is allowed.", fault),
        _ => fault,
    };

    private static StorageUnavailableException Unavailable(string code, string words, SqliteException fault) => new(code, words, fault);
}
