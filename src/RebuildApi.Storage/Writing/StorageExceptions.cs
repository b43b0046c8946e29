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

/// <summary>A change names something that the shop does not have.</summary>
public sealed class UnknownIdException(string kind, string id) : Exception($"There is no {kind} {id}.")
{
    /// <summary>Kind of thing.</summary>
    public string Kind { get; } = kind;

    /// <summary>The id.</summary>
    public string Id { get; } = id;
}

/// <summary>Another shop has not opened what is asked of it, or is not there at all: which of the two is not told.</summary>
public sealed class ShopNotOpenedException(string shop) : Exception($"No shop {shop} has opened this to yours.")
{
    /// <summary>The shop that was asked for.</summary>
    public string Shop { get; } = shop;
}

/// <summary>A correction can't stand: what it corrects is not there, or was corrected already.</summary>
public sealed class SupersedesException(string kind, string id, string supersedes, string code)
    : Exception($"The {kind} {id} can't supersede {supersedes}: {code}.")
{
    /// <summary>Kind of thing.</summary>
    public string Kind { get; } = kind;

    /// <summary>The correction.</summary>
    public string Id { get; } = id;

    /// <summary>What it was to correct.</summary>
    public string Supersedes { get; } = supersedes;

    /// <summary><c>unknown</c>, <c>other-unit</c> or <c>already-superseded</c>.</summary>
    public string Code { get; } = code;
}

/// <summary>A part is, or was found, in another unit or another place; one part can't be in two.</summary>
public sealed class ComponentPlacedElsewhereException(string component, string unit, string elsewhere)
    : Exception($"The component {component} can't be placed in {unit}: it is in {elsewhere}.")
{
    /// <summary>The part.</summary>
    public string Component { get; } = component;

    /// <summary>The unit it was to be placed in.</summary>
    public string Unit { get; } = unit;

    /// <summary>The unit it is in.</summary>
    public string Elsewhere { get; } = elsewhere;
}

/// <summary>A revision of a part does not follow the last one by one.</summary>
public sealed class RevisionOutOfOrderException(string component, int expected, int given)
    : Exception($"The next revision of component {component} is {expected}, not {given}.")
{
    /// <summary>The part.</summary>
    public string Component { get; } = component;

    /// <summary>The revision that comes next.</summary>
    public int Expected { get; } = expected;

    /// <summary>The revision that was given.</summary>
    public int Given { get; } = given;
}

/// <summary>A cursor that no page gave.</summary>
public sealed class UnknownCursorException(string cursor) : Exception($"The cursor {cursor} was not given by any page.")
{
    /// <summary>The cursor.</summary>
    public string Cursor { get; } = cursor;
}

/// <summary>The database can't be written or read just now, or must not be opened.</summary>
public sealed class StorageUnavailableException(string code, string message, Exception? inner = null) : Exception(message, inner)
{
    /// <summary>
    /// A stable code: <c>disk-full</c>, <c>read-only</c>, <c>locked</c>, <c>damaged</c>, <c>io-error</c>, <c>stopping</c>; at start also
    /// <c>engine-too-old</c>, <c>newer-schema</c>, <c>older-schema</c>, <c>not-ours</c>.
    /// </summary>
    public string Code { get; } = code;
}
