using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>A browser signs in.</summary>
/// <param name="Token">The token.</param>
public sealed record SignInRequest([Words(100)] string Token);
