namespace RebuildApi.Storage;

/// <summary>A customer by the name that units bear.</summary>
/// <param name="Name">The name, letter for letter.</param>
/// <param name="Units">How many units name it, or once did.</param>
/// <param name="First">When the first of them was taken in, UTC.</param>
/// <param name="Last">When something was last recorded of any of them, UTC.</param>
public sealed record CustomerSeen(string Name, int Units, DateTimeOffset First, DateTimeOffset Last);
