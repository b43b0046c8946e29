using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>One physical part, known shop-wide. Rework makes a new revision; readings stay with the revision they were taken of.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Revision">1 as it came; one more after each rework.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Origin">Where it came from.</param>
/// <param name="Attributes">Attribute to value, as declared or as last found. What is absent is unknown.</param>
/// <param name="Label">What is written on it or its bag, if anything.</param>
public sealed record Component(
    string Id,
    int Revision,
    string Kind,
    Origin Origin,
    IReadOnlyDictionary<string, string> Attributes,
    string? Label);

/// <summary>Where a part came from.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<Origin>))]
public enum Origin
{
    /// <summary>It came in this unit.</summary>
    Unit,

    /// <summary>It is new.</summary>
    New,

    /// <summary>It is a used part from the shelf.</summary>
    Shelf,

    /// <summary>It was taken from another unit.</summary>
    Core,
}
