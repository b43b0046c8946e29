using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Kit;

/// <summary>A test of what only records in a file have.</summary>
public sealed class FileFactAttribute : FactAttribute
{
    public FileFactAttribute() => Skip = TempSchema.Server is null ? null : "is about records in a file";
}

/// <summary>A test of what only records in PostgreSQL have.</summary>
public sealed class PostgresFactAttribute : FactAttribute
{
    public PostgresFactAttribute() => Skip = TempSchema.Server is null ? "needs PostgreSQL: REBUILD_TEST_POSTGRES names no connection" : null;
}

/// <inheritdoc cref="FileFactAttribute"/>
public sealed class FileTheoryAttribute : TheoryAttribute
{
    public FileTheoryAttribute() => Skip = TempSchema.Server is null ? null : "is about records in a file";
}
