using System.Net.Sockets;
using Npgsql;

namespace RebuildApi.Storage.Postgres;

/// <summary>What the engine's codes mean to a shop (PostgreSQL documentation, appendix A, "PostgreSQL Error Codes").</summary>
internal static class PostgresFaults
{
    /// <summary>Whether the connection is gone, so that another one may do.</summary>
    public static bool IsBroken(Exception fault) => fault switch
    {
        PostgresException p => p.SqlState is PostgresErrorCodes.AdminShutdown or PostgresErrorCodes.CrashShutdown or PostgresErrorCodes.CannotConnectNow
            or "25P03",
        NpgsqlException n => n.InnerException is IOException or SocketException or EndOfStreamException or TimeoutException,
        _ => fault is SocketException,
    };

    /// <summary>The fault in the store's words; the exception itself when it is not the database's fault.</summary>
    public static Exception Translate(Exception fault) => fault switch
    {
        PostgresException p => Told(p),
        _ when IsBroken(fault) => Unreachable(fault),
        NpgsqlException => Unreachable(fault),
        InvalidOperationException { Source: "Npgsql" } => Unreachable(fault),
        _ => fault,
    };

    private static Exception Told(PostgresException fault) => fault.SqlState switch
    {
        PostgresErrorCodes.DiskFull => Unavailable("disk-full", "The disk of the database is full. Make room; nothing acknowledged is lost.", fault),
        PostgresErrorCodes.ReadOnlySqlTransaction or PostgresErrorCodes.InsufficientPrivilege =>
            Unavailable("read-only", "The database can only be read by this role. Check what it may do.", fault),
        PostgresErrorCodes.LockNotAvailable or PostgresErrorCodes.DeadlockDetected or PostgresErrorCodes.SerializationFailure =>
            Unavailable("locked", "Another copy of the service, or another program, holds the shop's records. Try again.", fault),
        PostgresErrorCodes.QueryCanceled => Unavailable("too-slow", "The database did not answer in time. Try again, and look at its load.", fault),
        PostgresErrorCodes.TooManyConnections or PostgresErrorCodes.OutOfMemory =>
            Unavailable("unreachable", "The database takes no more connections. Allow it more, or let fewer copies run.", fault),
        PostgresErrorCodes.DataCorrupted or PostgresErrorCodes.IndexCorrupted =>
            Unavailable("damaged", "The database is damaged. Stop the service and restore the last verified backup.", fault),
        PostgresErrorCodes.IoError => Unavailable("io-error", "The disk of the database refused to read or write. Check it before going on.", fault),
        PostgresErrorCodes.InvalidPassword or PostgresErrorCodes.InvalidAuthorizationSpecification or PostgresErrorCodes.InvalidCatalogName =>
            Unavailable("unreachable", $"The database does not let the service in: {fault.MessageText}.", fault),
        _ when IsBroken(fault) => Unreachable(fault),
        _ => fault,
    };

    private static StorageUnavailableException Unreachable(Exception fault) =>
        Unavailable("unreachable", "The database can't be reached. Nothing acknowledged is lost; the service goes on by itself once it is there again.", fault);

    private static StorageUnavailableException Unavailable(string code, string words, Exception fault) => new(code, words, fault);
}
