using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost;

/// <summary>
/// The plug-ins of this shop and the families they supply. Safe to call from any thread; a change is seen whole or not at all, and whoever
/// holds a family keeps it as it was.
/// </summary>
public interface IPluginCatalog
{
    /// <summary>Every plug-in that was found, in the order in which they were taken up, each with its state and the reason for it.</summary>
    ImmutableArray<PluginStatus> Plugins { get; }

    /// <summary>Every family that can be used now.</summary>
    ImmutableArray<LoadedFamily> Families { get; }

    /// <summary>A family that can be used now, or null.</summary>
    LoadedFamily? Find(string familyId);

    /// <summary>
    /// Runs one rule in code. The plug-in sees a copy of the snapshot cut down to the positions of the scope, made from bytes; what it
    /// answers comes back as bytes. Never throws for what a plug-in does: what went wrong is said in the result.
    /// </summary>
    /// <param name="familyId">The family.</param>
    /// <param name="scope">One of the family's hooks.</param>
    /// <param name="snapshot">Everything known of the unit.</param>
    HookAnswerResult RunHook(string familyId, HookScope scope, UnitSnapshot snapshot);

    /// <summary>Looks at one plug-in's folder again: takes up a new or changed one, drops one whose folder is gone.</summary>
    /// <exception cref="PluginNotFoundException">There is no such plug-in, now or before.</exception>
    Task<PluginStatus> Reload(string id, CancellationToken cancellation);

    /// <summary>Takes up by itself what is dropped in, changed or removed, until it is cancelled.</summary>
    Task Watch(CancellationToken cancellation);

    /// <summary>Looks at every folder again.</summary>
    Task<ImmutableArray<PluginStatus>> ReloadAll(CancellationToken cancellation);

    /// <summary>Records that an administrator approved exactly these bytes, and loads them.</summary>
    /// <param name="id">The plug-in.</param>
    /// <param name="sha256">The hash that the administrator saw, lower-case hex.</param>
    /// <param name="who">Who approves.</param>
    /// <param name="cancellation">Gives up before the approval is written.</param>
    /// <exception cref="PluginNotFoundException">There is no such plug-in.</exception>
    /// <exception cref="PluginChangedException">What lies there now has another hash.</exception>
    Task<PluginStatus> Approve(string id, string sha256, string who, CancellationToken cancellation);

    /// <summary>Reads a family file and checks what it says, storing nothing. What is wrong is said with line and column.</summary>
    /// <param name="fileName">Name for messages.</param>
    /// <param name="utf8">The file's bytes.</param>
    ReadResult ReadFile(string fileName, byte[] utf8);

    /// <summary>Writes a family as a file that reads back as the same family.</summary>
    /// <exception cref="NotSupportedException">No plug-in writes files, or the family holds something that a file can't say; the message names it.</exception>
    byte[] WriteFile(Family family);

    /// <summary>Raised after a plug-in was taken up, replaced, refused or removed.</summary>
    event EventHandler<PluginStatus>? Changed;
}
