using System.Text.Json.Serialization;
using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>What a shop may open to another one for reading. There is nothing else: customers' texts, tokens and receivers are never among it.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<Opening>))]
public enum Opening
{
    /// <summary>What lies on the shelf with its readings, and how much of it is kept for units.</summary>
    Stock,

    /// <summary>Units without what names a customer, and their kept judgements.</summary>
    Units,
}
