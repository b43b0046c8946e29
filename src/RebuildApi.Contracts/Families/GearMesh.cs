using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>Two rows of teeth that run together.</summary>
/// <param name="Id">Lower case, digits and hyphens: <c>third-mesh</c>.</param>
/// <param name="Driver">The driving row on the drive side, as <c>position</c> or <c>position/tooth-set</c>.</param>
/// <param name="Driven">The driven row.</param>
/// <param name="CentreDistance">The characteristic of the case that sets the distance of the axes.</param>
/// <param name="Gears">The gears (<c>third</c>, <c>reverse</c>) in which the mesh carries the load.</param>
public sealed record GearMesh(string Id, string Driver, string Driven, Address CentreDistance, ImmutableArray<string> Gears);
