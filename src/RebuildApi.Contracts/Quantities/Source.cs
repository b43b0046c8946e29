using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>Where a number comes from, so that an answer can say so.</summary>
/// <param name="Kind">How much weight it carries.</param>
/// <param name="Citation">Words a person can follow: document and clause, or who judged it and when.</param>
public sealed record Source(SourceKind Kind, string Citation);

/// <summary>How much weight a source carries.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<SourceKind>))]
public enum SourceKind
{
    /// <summary>A published document.</summary>
    Published,

    /// <summary>Common practice of the trade, no document.</summary>
    CommonPractice,

    /// <summary>One person's judgement.</summary>
    Judgement,

    /// <summary>Made up for a demonstration; never to be used on a real gearbox.</summary>
    Invented,
}
