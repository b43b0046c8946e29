namespace RebuildApi.Engine.Identity;

/// <summary>The version of the arithmetic, part of every rule identity.</summary>
public static class EngineVersion
{
    /// <summary>Semantic version.</summary>
    public static string Current { get; } = typeof(EngineVersion).Assembly.GetName().Version!.ToString(3);
}
