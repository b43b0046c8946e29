using System.Collections.Immutable;
using System.Text.Json;

namespace RebuildApi.Storage;

/// <summary>Something that was done to the service itself and belongs on record: it has no table, only its entry in the chain.</summary>
/// <param name="Kind">Which sort of act; one of <see cref="Acts"/>.</param>
/// <param name="Subject">What it was done to: a plug-in, a backup, a customer.</param>
/// <param name="Person">Who did it; the service itself when it was nobody.</param>
/// <param name="Details">What matters of it, by name. Never a secret.</param>
public sealed record Act(string Kind, string Subject, string Person, ImmutableSortedDictionary<string, string> Details)
{
    /// <summary>Reads one from the body of its entry.</summary>
    public static Act Read(string body) => JsonSerializer.Deserialize(body, StoreJson.Default.Act)!;
}

/// <summary>The sorts of acts; each is also the kind of its entry in the chain.</summary>
public static class Acts
{
    /// <summary>Exactly these bytes of a plug-in were approved.</summary>
    public const string PluginApproval = "plugin-approval";

    /// <summary>An approval of a plug-in was taken back.</summary>
    public const string PluginWithdrawal = "plugin-withdrawal";

    /// <summary>A plug-in was looked at again.</summary>
    public const string PluginReload = "plugin-reload";

    /// <summary>The service started with other settings than before.</summary>
    public const string Settings = "settings";

    /// <summary>A backup was put in the place of the database.</summary>
    public const string Restore = "restore";

    /// <summary>Every sort.</summary>
    public static readonly ImmutableArray<string> All = [PluginApproval, PluginWithdrawal, PluginReload, Settings, Restore];
}
