using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>Bolts, nuts, screws or plugs that are all tightened alike: one line of the tightening list. Since contract 1.2.</summary>
/// <param name="Id">Lower case, digits and hyphens: <c>cover-bolts</c>.</param>
/// <param name="Name">What a person calls them.</param>
/// <param name="Positions">The places that they hold.</param>
/// <param name="Quantity">How many there are; at least 1.</param>
/// <param name="Torque">What each is tightened to, ends included.</param>
/// <param name="Criticality">What hangs on them.</param>
public sealed record Fastener(string Id, Text Name, ImmutableArray<string> Positions, int Quantity, Limits Torque, Criticality Criticality)
{
    /// <summary>How far each is turned on after the torque is reached; none where the torque is all.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public Limits? Angle { get; init; }

    /// <summary>What goes on the thread: oil, sealer, thread locker; none where nothing is said.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public Text? Thread { get; init; }

    /// <summary>When new ones go in; none where they may be used again.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public Text? Renewal { get; init; }

    /// <summary>In what order and in how many rounds; none where it does not matter.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public Text? Sequence { get; init; }
}
