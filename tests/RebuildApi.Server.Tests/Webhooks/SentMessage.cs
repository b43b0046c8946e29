using System.Text.Json.Nodes;
using RebuildApi.Server.Webhooks;

namespace RebuildApi.Server.Tests.Webhooks;

/// <summary>What a receiver was sent.</summary>
internal sealed record SentMessage(string Path, Dictionary<string, string> Headers, byte[] Body)
{
    public string Id => Headers["webhook-id"];

    public JsonNode Json => JsonNode.Parse(Body)!;

    public string Type => (string)Json["type"]!;

    public string[] Signatures => Headers["webhook-signature"].Split(' ');

    /// <summary>Whether one of its signatures was made with a secret.</summary>
    public bool IsSignedWith(string secret) =>
        Signatures.Contains(WebhookSignature.Of(secret, Id, DateTimeOffset.FromUnixTimeSeconds(long.Parse(Headers["webhook-timestamp"], System.Globalization.CultureInfo.InvariantCulture)), Body));
}
