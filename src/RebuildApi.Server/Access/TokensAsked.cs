namespace RebuildApi.Server.Access;

/// <summary>Whether requests must show a token.</summary>
/// <param name="Yes">False when everybody on this machine may do everything.</param>
public sealed record TokensAsked(bool Yes);
