using System.Globalization;

namespace RebuildApi.Server;

/// <summary>Gives new ids.</summary>
public interface IIdSource
{
    /// <summary>An id that nothing has yet; later ones sort after earlier ones.</summary>
    string Next();
}

/// <summary>Ids of 32 hex digits, the time first (UUID version 7, RFC 9562).</summary>
public sealed class SortableIds(TimeProvider time) : IIdSource
{
    /// <inheritdoc/>
    public string Next() => Guid.CreateVersion7(time.GetUtcNow()).ToString("N", CultureInfo.InvariantCulture);
}
