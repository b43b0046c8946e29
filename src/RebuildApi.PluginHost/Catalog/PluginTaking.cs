using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.PluginHost.Hooks;
using RebuildApi.PluginHost.Loading;
using RebuildApi.PluginHost.Trust;
using RebuildApi.PluginHost.Workers;

namespace RebuildApi.PluginHost.Catalog;

/// <summary>Takes up one plug-in: read once, looked through as data, asked whether it is approved, and only then loaded and asked what it declares.</summary>
internal sealed class PluginTaking(PluginHostOptions options, Approvals approvals, ShadowFolder shadow, FamilyChecking checking)
{
    private const string InProcess = "Not contained: it runs in the service's own process. A loop keeps one core; an exit, a stack overflow or "
        + "running out of memory ends the service.";
    private readonly WorkerLauncher? _launcher = options.Worker is { } command ? new WorkerLauncher(command, options.WorkerLimits) : null;
    private readonly DeclarationCache _declared = new(options.DeclarationFolder);

    /// <summary>Takes up what lies in a folder. Never throws for what is found there: that becomes the state.</summary>
    public PluginEntry Take(string folder)
    {
        var id = Path.GetFileName(folder);
        PluginFiles? files = null;
        Version? contract = null;
        try
        {
            files = PluginFolder.Read(folder, options.Limits);
            contract = AssemblyInspection.Check(files);
            return approvals.Cover(files.Id, files.Sha256)
                ? Load(files, contract)
                : Idle(PluginState.AwaitingApproval, "An administrator must approve its hash before any of its code runs.");
        }
        catch (PluginFault fault)
        {
            return Idle(fault.State, fault.Message);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Idle(PluginState.Failed, "Its folder can't be read: " + PluginFault.Tame(e.Message));
        }

        PluginEntry Idle(PluginState state, string reason) =>
            PluginEntry.Idle(id, state, reason, files?.Sha256, contract?.ToString(2), options.Time.GetUtcNow());
    }

    /// <summary>Reads what lies in a folder, or null when it breaks a rule.</summary>
    public PluginFiles? Look(string folder)
    {
        try
        {
            return PluginFolder.Read(folder, options.Limits);
        }
        catch (Exception e) when (e is PluginFault or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private PluginEntry Load(PluginFiles files, Version contract)
    {
        // In this process the bytes that were hashed are loaded from memory; a worker hashes its copy again before it loads it. Either way what runs is
        // what was approved, whoever wrote to either folder meanwhile.
        IPluginCode code = _launcher is null
            ? new InProcessCode(files)
            : new WorkerCode(_launcher, _declared, files, shadow.Write(files), options.DeclareBudget);
        try
        {
            return Loaded(files, contract, code, Declaration.Read(code.Declare(options.DeclareBudget), files.Id));
        }
        catch
        {
            code.Dispose();
            throw;
        }
    }

    private PluginEntry Loaded(PluginFiles files, Version contract, IPluginCode code, Declaration declared)
    {
        var supplier = new PluginIdentity(files.Id, PluginFault.Tame(declared.Manifest.Version), files.Sha256);
        Func<Family, ImmutableArray<Diagnostic>> check = approvals.CoverAsShipped(files.Id, files.Sha256) ? checking.Proven : checking.Unproven;
        var families = declared.Families.Select(f => (Family: f, Diagnostics: check(f))).ToLookup(f => f.Diagnostics.Any(d => d.IsError));
        var sound = families[false].Select(f => new LoadedFamily(f.Family, supplier));
        var refused = families[true].Select(f => new RefusedFamily(f.Family.Version.Id, "its declaration has errors.", f.Diagnostics));
        var door = new HookDoor(code, options);
        var manifest = declared.Manifest;
        var status = new PluginStatus(
            files.Id, PluginState.Loaded, Words(files), supplier.Version, PluginFault.Tame(manifest.Author), files.Sha256,
            [], [.. refused], contract.ToString(2), _launcher?.Containment ?? InProcess, 0, options.Time.GetUtcNow())
        {
            Doubts = [.. families[false].SelectMany(f => f.Diagnostics)],
        };
        return new PluginEntry(status, new RunningPlugin([.. sound], door, declared.Reads));
    }

    private static string Words(PluginFiles files) => files.Files.Any(AssemblyInspection.IsContractCopy)
        ? "In use. Its own copy of the contract is not: the service's is."
        : "In use.";
}
