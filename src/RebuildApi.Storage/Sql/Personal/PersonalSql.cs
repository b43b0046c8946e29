namespace RebuildApi.Storage.Sql.Personal;

/// <summary>How an entry <c>e</c> is read together with the texts that stand apart from it.</summary>
internal static class PersonalSql
{
    /// <summary>Joins them.</summary>
    public const string Join = " LEFT JOIN personal x ON x.shop = e.shop AND x.sequence = e.sequence ";

    /// <summary>The column.</summary>
    public const string Column = "x.body AS personal";
}

/// <summary>A body beside the texts that stand apart from it. Filled by name: of an empty answer the engine does not know that a text is a text.</summary>
internal sealed record ToldBody
{
    public long Version { get; init; }

    public string Body { get; init; } = "";

    public string? Personal { get; init; }

    /// <summary>The body as it was sent.</summary>
    public string Open(string kind) => PersonalBody.Open(kind, Body, Personal);
}
