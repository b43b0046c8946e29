using System.Collections.Immutable;

namespace RebuildApi.Server.Wire;

/// <summary>How the service is.</summary>
/// <param name="Status"><c>live</c> or <c>ready</c>.</param>
/// <param name="Checks">What was looked at.</param>
public sealed record HealthWire(string Status, ImmutableArray<HealthCheckWire> Checks);

/// <summary>One thing that was looked at.</summary>
/// <param name="Name">What.</param>
/// <param name="Ok">Whether it is as it should be.</param>
/// <param name="Detail">More about it.</param>
public sealed record HealthCheckWire(string Name, bool Ok, string Detail);
