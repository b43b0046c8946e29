namespace RebuildApi.Contracts;

/// <summary>A probability that somebody judged, with the range that can be defended.</summary>
/// <param name="Low">Lowest defensible probability.</param>
/// <param name="Best">Best judgement.</param>
/// <param name="High">Highest defensible probability.</param>
public sealed record Likelihood(double Low, double Best, double High);
