using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>Something that can be seen on a part, from a closed list. "Unknown" is not on the list: it is the absence of a finding, and never good.</summary>
/// <param name="Id">Unique within its kind: <c>dog.form</c>, <c>key.notch</c>.</param>
/// <param name="Name">What a person calls it, put as the question to answer.</param>
/// <param name="Values">The values allowed.</param>
public sealed record AttributeDefinition(string Id, Text Name, ImmutableArray<AttributeValue> Values);

/// <summary>One value that an attribute may have.</summary>
/// <param name="Id">Lower case, digits and hyphens: <c>back-tapered</c>.</param>
/// <param name="Name">What a person calls it.</param>
public sealed record AttributeValue(string Id, Text Name);
