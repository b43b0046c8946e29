using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>What is filled in or put on, how much and how the level is read. Since contract 1.2.</summary>
/// <param name="Id">Lower case, digits and hyphens: <c>gearbox-oil</c>.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Grade">What sort, by an open classification and in plain words; never a product.</param>
/// <param name="Positions">The places that it stands for: the oil to be filled, the bearings that are greased.</param>
/// <param name="Quantity">How much, as a volume, ends included.</param>
/// <param name="Level">How one sees that it is enough: where it stands, and how the gearbox does.</param>
public sealed record Lubricant(string Id, Text Name, Text Grade, ImmutableArray<string> Positions, Limits Quantity, Text Level)
{
    /// <summary>At which temperature the level is read; none where it does not matter.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public Limits? Temperature { get; init; }

    /// <summary>What it must not do to the linings of the synchronizer rings; none where nothing is lined.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public Text? Linings { get; init; }
}
