using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests;

/// <summary>Data flows one way: no folder of the engine needs another that needs it back.</summary>
public sealed class FolderTests
{
    [Fact]
    public void No_circle_runs_between_the_folders_of_the_engine() => Assert.Empty(Folders.OnCircles("RebuildApi.Engine"));
}
