using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Docs;

/// <summary>
/// Data flows one way in the service, too. What stands in the service's own namespace (its settings and how it is put together) is at everybody's hand, and not
/// looked at here.
/// </summary>
public sealed class FolderTests
{
    [Fact]
    public void No_circle_runs_between_the_folders_of_the_service() => Assert.Empty(Folders.OnCircles("RebuildApi.Server"));
}
