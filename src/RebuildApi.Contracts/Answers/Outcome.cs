using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>What can be said of a part or a clearance (vocabulary of JCGM 106 and ISO 14253-1). The default is not good.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<Outcome>))]
public enum Outcome
{
    /// <summary>Something needed is not known. Never counts as good.</summary>
    NotAssessed,

    /// <summary>Within the limits, surely enough.</summary>
    Conforming,

    /// <summary>Outside the limits, surely enough.</summary>
    Nonconforming,

    /// <summary>The uncertainty spans a limit. Never counts as good.</summary>
    Inconclusive,
}

/// <summary>Whether parts may run together. The default is not good.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<Compatibility>))]
public enum Compatibility
{
    /// <summary>Something needed is not known. Never counts as good.</summary>
    NotAssessed,

    /// <summary>They may.</summary>
    Compatible,

    /// <summary>They may, on a condition that the reasons state.</summary>
    Conditional,

    /// <summary>They may not.</summary>
    Incompatible,
}

/// <summary>What is done with a part.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<Disposition>))]
public enum Disposition
{
    /// <summary>Not decided: something needed is not known.</summary>
    Undecided,

    /// <summary>It goes back.</summary>
    Reuse,

    /// <summary>It goes back after a named piece of work.</summary>
    Rework,

    /// <summary>A different part goes in.</summary>
    Replace,
}
