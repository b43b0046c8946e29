using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>
/// What temperature does to one reading of a length. A part at θₚ above 20 °C has grown, and so has the scale of an instrument at θᵢ:
/// l₂₀ = l·(1 + αᵢ·θᵢ − αₚ·θₚ). Each product αθ has u² = α²u²(θ) + θ²u²(α) + u²(α)u²(θ), which holds at 20 °C too, where the first order has nothing to
/// say of α (JCGM 100:2008, H.1.7). All signed and on the scale of the reading: what all readings share adds up or cancels.
/// </summary>
/// <param name="Growth">The relative correction, αᵢ·θᵢ − αₚ·θₚ.</param>
/// <param name="PartExpansion">Standard uncertainty by the coefficient of the part.</param>
/// <param name="PartTemperature">By the temperature of the part; of part and instrument together where they have the same.</param>
/// <param name="InstrumentExpansion">By the coefficient of the instrument.</param>
/// <param name="InstrumentTemperature">By the temperature of the instrument, where it has its own.</param>
internal readonly record struct Warmth(
    double Growth, double PartExpansion, double PartTemperature, double InstrumentExpansion, double InstrumentTemperature)
{
    private const double ReferenceTemperature = 293.15;

    /// <summary>Of a reading on the scale; nothing for what is no length.</summary>
    /// <param name="point">The reading.</param>
    /// <param name="taken">Where the temperatures stand: the part is at 20 °C where nothing was said, the instrument as warm as the part.</param>
    /// <param name="instrument">The instrument; one whose expansion is not known is taken as right at any temperature.</param>
    /// <param name="material">What the part is made of; none when its temperature does not matter.</param>
    public static Warmth Of(double point, Taken taken, InstrumentState? instrument, Material? material)
    {
        var part = (taken.Temperature ?? ReferenceTemperature) - ReferenceTemperature;
        var scale = taken.InstrumentTemperature is { } own ? own - ReferenceTemperature : part;
        var doubt = InstrumentErrors.OfHalfWidth(taken.TemperatureHalfWidth ?? 0);
        var (ofPart, ofScale) = (material?.ExpansionPerKelvin ?? 0, instrument?.ExpansionPerKelvin ?? 0);
        var apart = taken.InstrumentTemperature is not null;
        return new Warmth(
            ofScale * scale - ofPart * part,
            -point * OfCoefficient(material?.ExpansionHalfWidth, part, doubt),
            point * doubt * (apart ? -ofPart : ofScale - ofPart),
            point * OfCoefficient(instrument?.ExpansionHalfWidth, scale, doubt),
            apart ? point * doubt * ofScale : 0);
    }

    private static double OfCoefficient(double? halfWidth, double warmer, double doubt) =>
        InstrumentErrors.OfHalfWidth(halfWidth ?? 0) * (warmer < 0 ? -1 : 1) * Math.Sqrt(warmer * warmer + doubt * doubt);
}
