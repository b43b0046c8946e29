namespace RebuildApi.Storage;

/// <summary>How often something may be tried.</summary>
/// <param name="AtOnce">How many times at once.</param>
/// <param name="Each">After how long there is one more.</param>
public sealed record TryLimit(int AtOnce, TimeSpan Each);
