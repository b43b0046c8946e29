namespace FamilyWords;

/// <summary>Where the numbers of the shipped families come from.</summary>
internal static class Sources
{
    /// <summary>Every dimension, limit and series is made up; none may be used on a real gearbox.</summary>
    public static readonly Source Demo = new(SourceKind.Invented, "Saltmarsh Lane Gearboxes demo data");

    /// <summary>What rebuilders hold to be so.</summary>
    public static readonly Source Trade = new(SourceKind.CommonPractice, "common practice, no source");

    /// <summary>A customary figure of its kind.</summary>
    public static readonly Source FromMemory = new(SourceKind.CommonPractice, "customary value, from memory; the maker's data goes first");

    /// <summary>How likely a cause or a sign is.</summary>
    public static readonly Source Judged = new(SourceKind.Judgement, "judgement, no counts behind it yet");
}
