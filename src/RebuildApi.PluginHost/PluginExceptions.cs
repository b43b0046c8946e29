namespace RebuildApi.PluginHost;

/// <summary>There is no plug-in of that id.</summary>
/// <param name="id">The id asked for.</param>
public sealed class PluginNotFoundException(string id) : Exception($"There is no plug-in {id}.")
{
    /// <summary>The id asked for.</summary>
    public string Id { get; } = id;
}

/// <summary>What was to be approved is not what lies there now.</summary>
/// <param name="id">The plug-in.</param>
/// <param name="found">The hash of what lies there, lower-case hex.</param>
public sealed class PluginChangedException(string id, string found)
    : Exception($"Plug-in {id} has changed since it was looked at; its hash is now {found}.")
{
    /// <summary>The plug-in.</summary>
    public string Id { get; } = id;

    /// <summary>The hash of what lies there now, lower-case hex.</summary>
    public string Found { get; } = found;
}
