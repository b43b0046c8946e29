using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace RebuildApi.Server.Webhooks;

/// <summary>The signature of Standard Webhooks, symmetric: HMAC-SHA256 over id, time and body, so that a receiver knows who sent what and when.</summary>
public static class WebhookSignature
{
    private const string Prefix = "whsec_";
    private const int SecretBytes = 32;

    /// <summary>A new secret, as the receiver is told it.</summary>
    public static string NewSecret() => Prefix + Convert.ToBase64String(RandomNumberGenerator.GetBytes(SecretBytes));

    /// <summary>One signature: <c>v1,</c> and base64.</summary>
    /// <param name="secret">The secret as the receiver knows it.</param>
    /// <param name="id">Id of the message.</param>
    /// <param name="time">When it is sent.</param>
    /// <param name="body">The body, byte for byte.</param>
    public static string Of(string secret, string id, DateTimeOffset time, ReadOnlySpan<byte> body)
    {
        byte[] signed = [.. Encoding.UTF8.GetBytes($"{id}.{Stamp(time)}."), .. body];
        return "v1," + Convert.ToBase64String(HMACSHA256.HashData(Convert.FromBase64String(secret[Prefix.Length..]), signed));
    }

    /// <summary>The time as the header and the signature carry it: whole seconds since 1970.</summary>
    public static string Stamp(DateTimeOffset time) => time.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture);
}
