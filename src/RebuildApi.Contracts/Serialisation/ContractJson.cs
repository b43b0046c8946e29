using System.Text.Json;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>
/// How everything of this contract is written as JSON: between host and hook, in the database, and (in canonical order) under hashes.
/// Generated at build, so that no plug-in's types are held by a serializer's cache.
/// </summary>
[JsonSourceGenerationOptions(
    JsonSerializerDefaults.General,
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    AllowDuplicateProperties = false,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(Family))]
[JsonSerializable(typeof(UnitSnapshot))]
[JsonSerializable(typeof(HookAnswer))]
[JsonSerializable(typeof(Verdict))]
[JsonSerializable(typeof(PairingVerdict))]
[JsonSerializable(typeof(ReadResult))]
[JsonSerializable(typeof(PluginManifest))]
public sealed partial class ContractJson : JsonSerializerContext;
