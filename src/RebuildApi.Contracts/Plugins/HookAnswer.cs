using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>What a hook says: pairing verdicts inside its scope. Nothing else is accepted.</summary>
/// <param name="Verdicts">The verdicts; identity and input hashes are stamped by the host.</param>
public sealed record HookAnswer(ImmutableArray<PairingVerdict> Verdicts);
