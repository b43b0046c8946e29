namespace RebuildApi.Storage;

/// <summary>A text that stands apart from the chain, with the random bytes of its seal.</summary>
/// <param name="Salt">32 random bytes, lower-case hex.</param>
/// <param name="Text">The text.</param>
public sealed record SealedText(string Salt, string Text);
