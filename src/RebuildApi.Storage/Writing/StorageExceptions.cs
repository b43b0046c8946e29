namespace RebuildApi.Storage;

/// <summary>An id that must be new is taken.</summary>
public sealed class DuplicateIdException(string kind, string id) : Exception($"There is already a {kind} {id}.")
{
    /// <summary>Kind of thing.</summary>
    public string Kind { get; } = kind;

    /// <summary>The id.</summary>
    public string Id { get; } = id;
}

/// <summary>Someone changed it since it was read.</summary>
public sealed class VersionConflictException(string kind, string id, long expected, long actual)
    : Exception($"The {kind} {id} is at version {actual}, not {expected}.")
{
    /// <summary>Kind of thing.</summary>
    public string Kind { get; } = kind;

    /// <summary>The id.</summary>
    public string Id { get; } = id;

    /// <summary>The version that the caller had seen.</summary>
    public long Expected { get; } = expected;

    /// <summary>The version that stands.</summary>
    public long Actual { get; } = actual;
}

/// <summary>An idempotency key was used before with another request.</summary>
public sealed class IdempotencyKeyReusedException(string key) : Exception($"The idempotency key {key} was used for another request.")
{
    /// <summary>The key.</summary>
    public string Key { get; } = key;
}

/// <summary>The database can't be written or read just now: full disk, read-only, locked, damaged.</summary>
public sealed class StorageUnavailableException(string code, string message, Exception inner) : Exception(message, inner)
{
    /// <summary>A stable code: <c>disk-full</c>, <c>read-only</c>, <c>locked</c>, <c>damaged</c>.</summary>
    public string Code { get; } = code;
}
