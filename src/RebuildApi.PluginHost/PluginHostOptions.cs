using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost;

/// <summary>Where plug-ins lie, who is trusted, and how much they may take.</summary>
public sealed record PluginHostOptions
{
    /// <summary>Folders that hold one folder for each plug-in. Where two hold the same id, the first one counts.</summary>
    public required ImmutableArray<string> PluginFolders { get; init; }

    /// <summary>Lists of approved hashes that are only read: what was shipped.</summary>
    public required ImmutableArray<string> ApprovedLists { get; init; }

    /// <summary>The list that the administrator's approvals are written to.</summary>
    public required string ApprovalsFile { get; init; }

    /// <summary>Where the bytes that were hashed are written before they are loaded. Nobody else should be able to write there.</summary>
    public required string ShadowFolder { get; init; }

    /// <summary>Checks a declared family; a family with an error is not used.</summary>
    public required Func<Family, ImmutableArray<Diagnostic>> CheckFamily { get; init; }

    /// <summary>
    /// Checks a family whose worked cases nobody has run yet: one from a file, or from a plug-in that was not shipped; as any other family when none is
    /// given. The cases of shipped plug-ins were run when they were built.
    /// </summary>
    public Func<Family, ImmutableArray<Diagnostic>>? CheckUnproven { get; init; }

    /// <summary>Names the edition of the checks, so that what they found is kept beside the declarations and found again; none keeps nothing.</summary>
    public string? CheckEdition { get; init; }

    /// <summary>The clock.</summary>
    public TimeProvider Time { get; init; } = TimeProvider.System;

    /// <summary>How much a plug-in's folder may hold.</summary>
    public FolderLimits Limits { get; init; } = new();

    /// <summary>How long a plug-in may take to be made and to declare its families.</summary>
    public TimeSpan DeclareBudget { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>The longest that any one call of a hook may take, whatever its scope asks for.</summary>
    public TimeSpan LongestHookBudget { get; init; } = TimeSpan.FromSeconds(2);

    /// <summary>How long a reader may take over one family file, and a writer to write one.</summary>
    public TimeSpan ReadBudget { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>Folders in which families lie that were written as files.</summary>
    public ImmutableArray<string> FamilyFolders { get; init; } = [];

    /// <summary>The most bytes of one family file.</summary>
    public int BytesPerFamilyFile { get; init; } = 1 << 20;

    /// <summary>
    /// How to start the worker process that each plug-in's code runs in. None runs it in the service's own process, where a loop keeps one core, and an
    /// exit, a stack overflow or running out of memory ends the service.
    /// </summary>
    public WorkerCommand? Worker { get; init; }

    /// <summary>
    /// Where what plug-ins declared is kept, so that their workers need not start for it again; none keeps nothing. Whoever can write there can
    /// change families.
    /// </summary>
    public string? DeclarationFolder { get; init; }

    /// <summary>How much a worker process may take.</summary>
    public WorkerLimits WorkerLimits { get; init; } = new();

    /// <summary>How the folders are watched.</summary>
    public WatchOptions Watch { get; init; } = new();

    /// <summary>When failing hooks are no longer called, and for how long.</summary>
    public SuspensionOptions Suspension { get; init; } = new();

    /// <summary>
    /// The usual places: shipped plug-ins and their list beside the program, the shop's own plug-ins, its approvals and the shadow copies in the data folder.
    /// </summary>
    /// <param name="program">The folder of the program; <see cref="AppContext.BaseDirectory"/>.</param>
    /// <param name="data">The shop's data folder.</param>
    /// <param name="checkFamily">Checks a declared family.</param>
    public static PluginHostOptions Beside(string program, string data, Func<Family, ImmutableArray<Diagnostic>> checkFamily) => new()
    {
        PluginFolders = [Path.Combine(program, "plugins"), Path.Combine(data, "plugins")],
        ApprovedLists = [Path.Combine(program, "approved-plugins.txt")],
        ApprovalsFile = Path.Combine(data, "approved-plugins.txt"),
        ShadowFolder = Path.Combine(data, "shadow"),
        DeclarationFolder = Path.Combine(data, "declared"),
        FamilyFolders = [Path.Combine(data, "families")],
        CheckFamily = checkFamily,
    };
}

/// <summary>How much a plug-in's folder may hold.</summary>
/// <param name="Files">The most files, assemblies or not.</param>
/// <param name="BytesPerFile">The most bytes of one assembly.</param>
/// <param name="BytesInAll">The most bytes of all its assemblies.</param>
public sealed record FolderLimits(int Files = 100, long BytesPerFile = 16 << 20, long BytesInAll = 64 << 20);

/// <summary>How the folders are watched.</summary>
/// <param name="Settle">How long what was dropped in must stay as it is before it is looked at: half a copy is no plug-in.</param>
/// <param name="Poll">How often the folders are looked at when the system tells of no change.</param>
public sealed record WatchOptions(TimeSpan Settle, TimeSpan Poll)
{
    /// <summary>A second to settle, a look every ten seconds.</summary>
    public WatchOptions()
        : this(TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(10))
    {
    }
}

/// <summary>When failing hooks are no longer called, and for how long.</summary>
/// <param name="AfterFaults">How many calls must have been made, at least half of them failing, within the window; 2 or more.</param>
/// <param name="Window">The window.</param>
/// <param name="First">How long the first suspension lasts; each one that follows lasts twice as long.</param>
/// <param name="Longest">The longest that a suspension lasts.</param>
public sealed record SuspensionOptions(int AfterFaults, TimeSpan Window, TimeSpan First, TimeSpan Longest)
{
    /// <summary>Three faults in a minute: half a minute, doubling to an hour.</summary>
    public SuspensionOptions()
        : this(3, TimeSpan.FromMinutes(1), TimeSpan.FromSeconds(30), TimeSpan.FromHours(1))
    {
    }
}
