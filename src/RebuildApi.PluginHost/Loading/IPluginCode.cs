using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost.Loading;

/// <summary>The code of one plug-in, wherever it runs. Bytes in, bytes out.</summary>
internal interface IPluginCode : IDisposable
{
    /// <summary>Loads the code and asks who it is and which families it has. Called once.</summary>
    /// <exception cref="PluginFault">It broke, was late, or its answer is not complete.</exception>
    DeclaredBytes Declare(TimeSpan budget);

    /// <summary>Runs one hook. May be called from several threads at once.</summary>
    /// <param name="hook">Id of the hook.</param>
    /// <param name="snapshot">A <see cref="UnitSnapshot"/> as JSON.</param>
    /// <param name="budget">How long it may take.</param>
    /// <returns>A <see cref="HookAnswer"/> as JSON.</returns>
    /// <exception cref="PluginFault">It broke, was late, or its answer is not complete.</exception>
    byte[] Judge(string hook, byte[] snapshot, TimeSpan budget);
}

/// <summary>What a plug-in declares, as JSON.</summary>
/// <param name="Manifest">A <see cref="PluginManifest"/>.</param>
/// <param name="Families">Each a <see cref="Family"/>.</param>
internal sealed record DeclaredBytes(byte[] Manifest, ImmutableArray<byte[]> Families);
