using System.Text.Json.Serialization;
using RebuildApi.Contracts;

namespace RebuildApi.Server.Wire;

/// <summary>Where a part that could go in is now.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<PartFrom>))]
public enum PartFrom
{
    /// <summary>The request speaks of it.</summary>
    Sent,

    /// <summary>In the unit itself, or laid aside from it.</summary>
    SameUnit,

    /// <summary>In another unit of the shop, or laid aside from it: to be asked for first.</summary>
    OtherUnit,

    /// <summary>On the shop's shelf.</summary>
    Shelf,

    /// <summary>In the shop's catalogue: to be bought.</summary>
    Catalogue,
}
