using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>The thicknesses in which a selective part really exists, one by one. A step is never assumed.</summary>
/// <param name="Id">Lower case, digits and hyphens: <c>snap-ring-3-4</c>.</param>
/// <param name="Kind">The kind of part.</param>
/// <param name="Members">What exists, thinnest first.</param>
/// <param name="Tolerance">Half-width of the thickness tolerance of an unmeasured member.</param>
/// <param name="Source">Where the numbers come from.</param>
public sealed record Series(string Id, string Kind, ImmutableArray<SeriesMember> Members, Length Tolerance, Source Source);

/// <summary>One thickness that exists.</summary>
/// <param name="Id">Unique within the series; what a person orders.</param>
/// <param name="Thickness">Nominal thickness.</param>
public sealed record SeriesMember(string Id, Length Thickness);
