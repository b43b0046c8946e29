namespace RebuildApi.Storage.Sql;

/// <summary>An entry of the chain as it lies in its table, filled by name: a list leaves out what only one entry shows.</summary>
internal sealed record EntryRow
{
    public string Shop { get; init; } = "";

    public long Sequence { get; init; }

    public string At { get; init; } = "";

    public string Actor { get; init; } = "";

    public string Operation { get; init; } = "";

    public string Kind { get; init; } = "";

    public string Unit { get; init; } = "";

    public string Id { get; init; } = "";

    public string Body { get; init; } = "";

    public string Previous { get; init; } = "";

    public string Hash { get; init; } = "";

    public long Form { get; init; }

    public string? Personal { get; init; }

    /// <summary>What its hash is made of.</summary>
    public ChainLink Link() => new(Shop, Sequence, At, Actor, Operation, Kind, Unit, Id, Body, Previous, Hash, Form);
}
