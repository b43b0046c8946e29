using RebuildApi.TestKit;

namespace RebuildApi.Storage.Tests;

/// <summary>A test of what only the engine in the process has: its file.</summary>
public sealed class FileFactAttribute : FactAttribute
{
    public FileFactAttribute() => Skip = OnEngine.SkipFile;
}

/// <inheritdoc cref="FileFactAttribute"/>
public sealed class FileTheoryAttribute : TheoryAttribute
{
    public FileTheoryAttribute() => Skip = OnEngine.SkipFile;
}

/// <summary>A test of what only PostgreSQL has.</summary>
public sealed class PostgresFactAttribute : FactAttribute
{
    public PostgresFactAttribute() => Skip = OnEngine.SkipServer;
}

internal static class OnEngine
{
    public static string? SkipFile => TempSchema.Server is null ? null : "is about the file of the engine in the process";

    public static string? SkipServer => TempSchema.Server is null ? "needs PostgreSQL: REBUILD_TEST_POSTGRES names no connection" : null;
}
