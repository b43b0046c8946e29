using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>
/// Something odd about one reading as it came in. It is said and the reading is kept as sent: a doubt never corrects anything.
/// </summary>
/// <param name="Code">
/// <c>plausible-in-another-unit</c>, <c>digits-swapped</c>, <c>decimal-slipped</c>, <c>far-from-siblings</c>,
/// <c>finer-than-instrument</c> or <c>outside-instrument-range</c>.
/// </param>
/// <param name="Reading">Which reading of the measurement, from 0.</param>
/// <param name="Alternative">What may have been meant; for a reading far from its siblings, where they lie; for one outside
/// the instrument's range, its nearest end.</param>
/// <param name="Unit">The unit it may have been meant in, where that is the doubt.</param>
/// <param name="Reason">The doubt in a form that can be put into words.</param>
public sealed record Doubt(string Code, int Reading, Quantity Alternative, string? Unit, Reason Reason);
