using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace RebuildApi.Storage.Transfer;

/// <summary>The first line of a portable file.</summary>
/// <param name="Format">Always <c>rebuild-export/1</c>.</param>
/// <param name="Shop">The shop.</param>
/// <param name="Schema">Number of the last migration that the rows fit.</param>
/// <param name="Made">When, UTC.</param>
/// <param name="Rows">Table to number of rows that follow, in the order in which they follow.</param>
internal sealed record PortableHeader(string Format, string Shop, int Schema, DateTimeOffset Made, ImmutableSortedDictionary<string, long> Rows)
{
    public const string TheFormat = "rebuild-export/1";
}

/// <summary>One row.</summary>
/// <param name="Table">Name of its table.</param>
/// <param name="Row">Column to value: text, whole number, null, or <c>{"base64": "…"}</c> for bytes.</param>
internal sealed record PortableRow(string Table, ImmutableSortedDictionary<string, JsonElement> Row);

/// <summary>The last line.</summary>
/// <param name="End">Always true; a file without this line was cut off.</param>
/// <param name="Rows">How many rows there were.</param>
/// <param name="Entries">How many entries the chain has.</param>
/// <param name="Head">Hash of the last of them.</param>
/// <param name="Sha256">SHA-256 of everything before this line, lower-case hex.</param>
internal sealed record PortableEnd(bool End, long Rows, long Entries, string Head, string Sha256);

/// <summary>How the lines are written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(PortableHeader))]
[JsonSerializable(typeof(PortableRow))]
[JsonSerializable(typeof(PortableEnd))]
[JsonSerializable(typeof(ImmutableSortedDictionary<string, string>))]
internal sealed partial class PortableJson : JsonSerializerContext;
