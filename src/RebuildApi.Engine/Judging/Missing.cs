using System.Text.Json.Serialization;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Judging;

/// <summary>Something that has not been read or seen yet.</summary>
/// <param name="Position">Where.</param>
/// <param name="Index">Which of several like parts.</param>
/// <param name="What">What sort of thing.</param>
/// <param name="Id">The characteristic, attribute or clearance; the position itself for an inspection.</param>
/// <param name="Name">What a person calls it.</param>
public sealed record Missing(string Position, int Index, MissingWhat What, string Id, Text Name);

/// <summary>What sort of thing is missing.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<MissingWhat>))]
public enum MissingWhat
{
    /// <summary>No part is recorded in the position.</summary>
    Part,

    /// <summary>Nobody has looked at the part for damage.</summary>
    Inspection,

    /// <summary>An attribute is unknown.</summary>
    Attribute,

    /// <summary>A characteristic has not been read.</summary>
    Reading,
}

/// <summary>Something that keeps the unit from going on.</summary>
/// <param name="Subject">What it is about: a part, a characteristic, a clearance or a pairing.</param>
/// <param name="Reason">Why.</param>
public sealed record Block(string Subject, Reason Reason);
