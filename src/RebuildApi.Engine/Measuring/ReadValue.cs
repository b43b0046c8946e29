using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>One plain reading, brought to 20 °C, with what it was read by.</summary>
/// <param name="Point">The value on its scale, at 20 °C.</param>
/// <param name="Place">The plane or angle, if said.</param>
/// <param name="InstrumentId">Id of the instrument as it was given, if it was.</param>
/// <param name="Step">The finest step that could be read, on the scale; 0 when unknown.</param>
/// <param name="LimitUncertainty">Standard uncertainty from the limit of error, on the scale; 0 when unknown.</param>
/// <param name="Warmth">What temperature did to it.</param>
/// <param name="Study">What a gauge study found of the instrument at this characteristic, if there was one.</param>
/// <param name="ReferenceUncertainty">Standard uncertainty of the standard that the instrument was set by, on the scale; 0 when unknown.</param>
internal sealed record ReadValue(
    double Point,
    string? Place,
    string? InstrumentId,
    double Step,
    double LimitUncertainty,
    Warmth Warmth,
    GaugeCapability? Study,
    double ReferenceUncertainty);
