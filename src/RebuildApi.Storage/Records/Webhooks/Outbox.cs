using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>How far a receiver has come, and what its deliveries are signed with.</summary>
/// <param name="Sequence">Everything up to this was delivered, given up or not wanted.</param>
/// <param name="Secrets">Its secrets, the newest first; one that was replaced still signs until it ends.</param>
public sealed record Outbox(long Sequence, ImmutableArray<WebhookSecret> Secrets);

/// <summary>What deliveries are signed with.</summary>
/// <param name="Secret">The secret as the receiver knows it, <c>whsec_</c> and base64; in the records closed by whoever keeps it.</param>
/// <param name="Made">When it was made, UTC.</param>
/// <param name="Ends">Until when it still signs, UTC; null for the one that stands.</param>
public sealed record WebhookSecret(string Secret, DateTimeOffset Made, DateTimeOffset? Ends);
