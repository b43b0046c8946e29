using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>
/// What a plug-in assembly offers: one public class with a public constructor without parameters.
/// </summary>
/// <remarks>
/// <para>
/// The story. The host finds the assembly in its own folder, asks whether an administrator approved its SHA-256, and reads the contract version
/// that it was compiled against before any of its code runs. It then makes the class and calls <see cref="Declare"/> once; the answer is
/// checked, kept by its hash, and the engine works from that alone. A family that is all data is never called again.
/// </para>
/// <para>
/// <see cref="Judge"/> is called only for the hooks that the family declared, each time with a snapshot cut down to the positions that the
/// hook declared and made from bytes, so that nothing the plug-in does to it is seen by anyone else. Calls may come on any thread, several at once:
/// keep no state. Answer within the declared budget. Read no clock, file or network: the same snapshot must give the same answer for ever.
/// </para>
/// <para>
/// If it throws, answers late, or answers about something outside its scope, that answer is dropped, the pairing is not assessed with the
/// reason, the fault is counted against the plug-in, and everybody else goes on.
/// </para>
/// </remarks>
public interface IFamilyPlugin
{
    /// <summary>Who it is. Read once, before <see cref="Declare"/>.</summary>
    PluginManifest Manifest { get; }

    /// <summary>Its families. Called once for each load.</summary>
    ImmutableArray<Family> Declare();

    /// <summary>Runs one rule in code over a snapshot cut down to its scope.</summary>
    /// <param name="hookId">Id of the declared hook.</param>
    /// <param name="snapshot">What the hook may see.</param>
    /// <returns>Pairing verdicts about the hook's own rules; the host stamps their identity.</returns>
    HookAnswer Judge(string hookId, UnitSnapshot snapshot);
}
