namespace RebuildApi.PluginHost.Tests;

/// <summary>Tests that count what this process or this machine holds: nothing runs beside them.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class Alone
{
    public const string Name = "alone";
}
