using System.Collections.Immutable;

namespace RebuildApi.Storage.Sql;

/// <summary>What an engine says of the tables that it holds.</summary>
internal interface ICatalogue
{
    /// <summary>The tables, by name.</summary>
    ImmutableArray<string> Tables();

    /// <summary>The columns of a table, in their order.</summary>
    ImmutableArray<string> Columns(string table);

    /// <summary>The columns of a table's key, in their order.</summary>
    ImmutableArray<string> Key(string table);

    /// <summary>The tables that a table's foreign keys name.</summary>
    ImmutableArray<string> PointsTo(string table);
}
