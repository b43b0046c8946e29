using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>How the stored records are written as JSON; the same manner as <see cref="ContractJson"/>.</summary>
[JsonSourceGenerationOptions(
    JsonSerializerDefaults.General,
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    AllowDuplicateProperties = false,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(Unit))]
[JsonSerializable(typeof(Component))]
[JsonSerializable(typeof(Placement))]
[JsonSerializable(typeof(Measurement))]
[JsonSerializable(typeof(TrialAssembly))]
[JsonSerializable(typeof(Finding))]
[JsonSerializable(typeof(Decision))]
[JsonSerializable(typeof(Instrument))]
[JsonSerializable(typeof(JudgementKept))]
[JsonSerializable(typeof(Rates))]
[JsonSerializable(typeof(Part))]
[JsonSerializable(typeof(StockItem))]
[JsonSerializable(typeof(Reservation))]
[JsonSerializable(typeof(KeptPlan))]
[JsonSerializable(typeof(PlanChoice))]
[JsonSerializable(typeof(Quote))]
[JsonSerializable(typeof(Approval))]
[JsonSerializable(typeof(InvoiceLine))]
[JsonSerializable(typeof(Machining))]
[JsonSerializable(typeof(WorkDone))]
[JsonSerializable(typeof(Calibration))]
[JsonSerializable(typeof(GaugeStudyKept))]
[JsonSerializable(typeof(Comeback))]
[JsonSerializable(typeof(PolicyEdition))]
[JsonSerializable(typeof(TestDone))]
[JsonSerializable(typeof(ConfirmedCauses))]
[JsonSerializable(typeof(PriorUpdate))]
[JsonSerializable(typeof(Act))]
[JsonSerializable(typeof(Webhook))]
[JsonSerializable(typeof(StagePassing))]
[JsonSerializable(typeof(SignOff))]
[JsonSerializable(typeof(Attachment))]
[JsonSerializable(typeof(PartLabel))]
[JsonSerializable(typeof(PartRemoval))]
[JsonSerializable(typeof(AccessToken))]
[JsonSerializable(typeof(Erasure))]
[JsonSerializable(typeof(Sharing))]
[JsonSerializable(typeof(ImmutableSortedDictionary<string, SealedText>))]
[JsonSerializable(typeof(ImmutableSortedDictionary<string, string>))]
internal sealed partial class StoreJson : JsonSerializerContext;
