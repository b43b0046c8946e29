using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>What sort of quantity a characteristic is. The SI unit of <see cref="Real"/> stands behind each.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<Dimension>))]
public enum Dimension
{
    /// <summary>Whole nanometres as <see cref="Exact"/>; metres where only an estimate exists.</summary>
    Length,

    /// <summary>Radians.</summary>
    Angle,

    /// <summary>Newtons.</summary>
    Force,

    /// <summary>Newton metres.</summary>
    Torque,

    /// <summary>Kilograms.</summary>
    Mass,

    /// <summary>Kelvin; a temperature, not a difference.</summary>
    Temperature,

    /// <summary>Vickers hardness number (HV).</summary>
    Hardness,

    /// <summary>A plain number of things.</summary>
    Count,

    /// <summary>A plain number.</summary>
    Ratio,

    /// <summary>Cubic metres. Since contract 1.2.</summary>
    Volume,
}
