using System.Text.Json;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>Writes a <see cref="Length"/> as its whole number of nanometres, so that canonical text and hashes never meet a fraction.</summary>
public sealed class LengthJsonConverter : JsonConverter<Length>
{
    /// <inheritdoc/>
    public override Length Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => new(reader.GetInt64());

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Length value, JsonSerializerOptions options) => writer.WriteNumberValue(value.Nanometres);
}
