using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace RebuildApi.Server.Access;

/// <summary>
/// The secret of a token: 256 random bits. A plain SHA-256 of it is kept, since a slow hash only helps secrets that can be guessed.
/// </summary>
public static class Secret
{
    /// <summary>How every secret begins, so that one that strayed into a file can be found.</summary>
    public const string Prefix = "rb_";

    private const int Bytes = 32;
    private const int Longest = 100;

    /// <summary>A new one.</summary>
    public static string New() => Prefix + Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>The hash that is kept.</summary>
    public static string HashOf(string secret) => Convert.ToHexStringLower(Digest(secret));

    /// <summary>
    /// Which of some hashes is that of a secret; -1 for none. Looks at all of them and at all of each, whatever it has found, so the time taken tells nothing.
    /// </summary>
    public static int Find(IReadOnlyList<byte[]> hashes, string secret)
    {
        var sent = Digest(secret.Length <= Longest ? secret : "");
        var found = -1;
        for (var i = 0; i < hashes.Count; i++)
        {
            if (CryptographicOperations.FixedTimeEquals(hashes[i], sent))
                found = i;
        }

        return found;
    }

    private static byte[] Digest(string secret) => SHA256.HashData(Encoding.UTF8.GetBytes(secret));
}
