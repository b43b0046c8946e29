using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;
using RebuildApi.Contracts;
using RebuildApi.PluginHost.Trust;

namespace RebuildApi.PluginHost.Loading;

/// <summary>
/// The code of one plug-in, loaded into this process. Only bytes go in and come out, so that nothing of a plug-in is held by anybody else and it can
/// be unloaded. What it throws comes out as a <see cref="PluginFault"/>; time is watched by whoever calls.
/// </summary>
internal sealed class LoadedCode : IDisposable
{
    private PluginLoadContext? _context;
    private IFamilyPlugin? _plugin;

    private LoadedCode(PluginLoadContext context, IFamilyPlugin plugin) => (_context, _plugin) = (context, plugin);

    /// <summary>Loads the assemblies and makes the plug-in's class.</summary>
    /// <exception cref="PluginFault">There is no such class, or it broke.</exception>
    public static LoadedCode Load(PluginFiles files)
    {
        var context = new PluginLoadContext(files);
        try
        {
            return new LoadedCode(context, Guard(() => Make(context.LoadMain())));
        }
        catch
        {
            context.Unload();
            throw;
        }
    }

    /// <summary>Asks who it is and which families it has.</summary>
    /// <exception cref="PluginFault">It broke, or its answer is not complete.</exception>
    public DeclaredBytes Declare()
    {
        var plugin = Plugin;
        return Guard(() => Written(() =>
        {
            var manifest = JsonSerializer.SerializeToUtf8Bytes(plugin.Manifest, ContractJson.Default.PluginManifest);
            var families = plugin.Declare().Select(f => JsonSerializer.SerializeToUtf8Bytes(f, ContractJson.Default.Family));
            return new DeclaredBytes(manifest, [.. families], plugin is IFamilyReader);
        }));
    }

    /// <summary>Runs one hook.</summary>
    /// <param name="hook">Id of the hook.</param>
    /// <param name="snapshot">A <see cref="UnitSnapshot"/> as JSON.</param>
    /// <returns>A <see cref="HookAnswer"/> as JSON.</returns>
    /// <exception cref="PluginFault">It broke, or its answer is not complete.</exception>
    public byte[] Judge(string hook, ReadOnlySpan<byte> snapshot)
    {
        var plugin = Plugin;
        var own = JsonSerializer.Deserialize(snapshot, ContractJson.Default.UnitSnapshot)!;
        return Guard(() => Written(() => JsonSerializer.SerializeToUtf8Bytes(plugin.Judge(hook, own), ContractJson.Default.HookAnswer)));
    }

    /// <summary>Reads a family file.</summary>
    /// <returns>A <see cref="ReadResult"/> as JSON.</returns>
    /// <exception cref="PluginFault">It reads no files, broke, or its answer is not complete.</exception>
    public byte[] Read(string fileName, ReadOnlyMemory<byte> utf8)
    {
        var reader = Plugin as IFamilyReader ?? throw PluginFault.Invalid("It reads no files.");
        return Guard(() => Written(() => JsonSerializer.SerializeToUtf8Bytes(reader.Read(fileName, utf8), ContractJson.Default.ReadResult)));
    }

    /// <summary>Writes a family, given as JSON, as a file.</summary>
    /// <exception cref="PluginFault">It writes no files, can't write this one, or broke.</exception>
    public byte[] Write(ReadOnlySpan<byte> family)
    {
        var writer = Plugin as IFamilyWriter ?? throw PluginFault.Invalid("It writes no files.");
        var own = JsonSerializer.Deserialize(family, ContractJson.Default.Family)!;
        return Guard(() => writer.Write(own));
    }

    /// <summary>Lets go of the code. It is unloaded once no call is inside it.</summary>
    public void Dispose()
    {
        _plugin = null;
        Interlocked.Exchange(ref _context, null)?.Unload();
    }

    private IFamilyPlugin Plugin => _plugin ?? throw new ObjectDisposedException(nameof(LoadedCode));

    private static IFamilyPlugin Make(Assembly assembly)
    {
        var classes = assembly.GetExportedTypes().Where(t => t is { IsClass: true, IsAbstract: false } && t.IsAssignableTo(typeof(IFamilyPlugin))).ToList();
        return classes switch
        {
            [] => throw PluginFault.Invalid("It has no public class that is a family plug-in."),
            [var only] when only.GetConstructor(Type.EmptyTypes) is not null => (IFamilyPlugin)Activator.CreateInstance(only)!,
            [_] => throw PluginFault.Invalid("Its class has no public constructor without parameters."),
            _ => throw PluginFault.Invalid("It has more than one public class that is a family plug-in."),
        };
    }

    private static T Guard<T>(Func<T> work)
    {
        try
        {
            return work();
        }
        catch (PluginFault)
        {
            throw;
        }
        catch (TargetInvocationException e) when (e.InnerException is { } inner)
        {
            throw PluginFault.Threw(inner);
        }
        catch (Exception e)
        {
            // A plug-in may throw anything; whatever it is ends here as words.
            throw PluginFault.Threw(e);
        }
    }

    private static T Written<T>(Func<T> work)
    {
        try
        {
            return work();
        }
        catch (JsonException e)
        {
            throw PluginFault.Invalid("What it says can't be written down: " + PluginFault.Tame(e.Message));
        }
    }
}
