using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>Something that a family wants done before a gearbox leaves a stage, besides what every gearbox needs. Since contract 1.2.</summary>
/// <param name="Id">Lower case, digits and hyphens: <c>input-preload-read</c>.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Stage">The stage that is not left without it.</param>
/// <param name="Demand">What must have been done.</param>
/// <param name="Reason">Why, in plain words.</param>
/// <param name="Criticality">What hangs on it.</param>
/// <param name="MayExcept">Whether it may be left out over a signature, where the shop's policy allows that too. Never where it is safety-critical.</param>
public sealed record FamilyGate(string Id, Text Name, GateStage Stage, GateDemand Demand, Text Reason, Criticality Criticality, bool MayExcept);

/// <summary>A stage that is left through a gate. Since contract 1.2.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<GateStage>))]
public enum GateStage
{
    /// <summary>While it is whole.</summary>
    PreStrip,

    /// <summary>While it comes apart and is looked at.</summary>
    Teardown,

    /// <summary>While it goes together.</summary>
    Assembly,

    /// <summary>While it is tried.</summary>
    FinalTest,
}

/// <summary>What a gate wants done: <see cref="LoopRead"/>, <see cref="TestTried"/> or <see cref="CheckSigned"/>. Since contract 1.2.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "is")]
[JsonDerivedType(typeof(LoopRead), "loop-read")]
[JsonDerivedType(typeof(TestTried), "test-tried")]
[JsonDerivedType(typeof(CheckSigned), "check-signed")]
public abstract record GateDemand
{
    private protected GateDemand()
    {
    }
}

/// <summary>A clearance is read directly on the assembly; on the one that was built, once it has gone together. Since contract 1.2.</summary>
/// <param name="Loop">The clearance; one that can be read so.</param>
public sealed record LoopRead(string Loop) : GateDemand;

/// <summary>A test that the family declares was tried, whatever it showed. Since contract 1.2.</summary>
/// <param name="Test">The test.</param>
public sealed record TestTried(string Test) : GateDemand;

/// <summary>A check of the gearbox was tried, passed and signed for. Since contract 1.2.</summary>
/// <param name="How">How it is tried and what shows that it passed.</param>
public sealed record CheckSigned(Text How) : GateDemand;
