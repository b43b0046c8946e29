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

    /// <summary>Reads a family file. May be called from several threads at once.</summary>
    /// <param name="fileName">Name for messages.</param>
    /// <param name="utf8">The file's bytes.</param>
    /// <param name="budget">How long it may take.</param>
    /// <returns>A <see cref="ReadResult"/> as JSON.</returns>
    /// <exception cref="PluginFault">It reads no files, broke, was late, or its answer is not complete.</exception>
    byte[] Read(string fileName, byte[] utf8, TimeSpan budget);

    /// <summary>Writes a family as a file.</summary>
    /// <param name="family">A <see cref="Family"/> as JSON.</param>
    /// <param name="budget">How long it may take.</param>
    /// <returns>The file's bytes.</returns>
    /// <exception cref="PluginFault">It writes no files, can't write this family, broke, or was late.</exception>
    byte[] Write(byte[] family, TimeSpan budget);
}

/// <summary>What a plug-in declares, as JSON.</summary>
/// <param name="Manifest">A <see cref="PluginManifest"/>.</param>
/// <param name="Families">Each a <see cref="Family"/>.</param>
/// <param name="Reads">Whether it reads family files.</param>
internal sealed record DeclaredBytes(byte[] Manifest, ImmutableArray<byte[]> Families, bool Reads);
