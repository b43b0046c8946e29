using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Judging;

/// <summary>The family's rules in code, wherever they run. The engine hands over a whole snapshot; whoever runs the hook cuts it to the scope.</summary>
public interface IHooks
{
    /// <summary>Runs one hook.</summary>
    /// <param name="scope">The declared hook.</param>
    /// <param name="snapshot">The unit.</param>
    /// <returns>Its verdicts; when it failed, one verdict that is not assessed and says why.</returns>
    ImmutableArray<PairingVerdict> Run(HookScope scope, UnitSnapshot snapshot);
}

/// <summary>For families that are all data, and for what-ifs where no code may run.</summary>
public sealed class NoHooks : IHooks
{
    /// <inheritdoc/>
    public ImmutableArray<PairingVerdict> Run(HookScope scope, UnitSnapshot snapshot) => [];
}
