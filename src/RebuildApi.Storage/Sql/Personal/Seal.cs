using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace RebuildApi.Storage.Sql.Personal;

/// <summary>
/// What stands in an entry in the place of a text: SHA-256 of 32 random bytes followed by the text. Without the random bytes nobody can find the text by trying.
/// </summary>
internal static partial class Seal
{
    private const int SaltBytes = 32;

    /// <summary>A text with fresh random bytes.</summary>
    public static SealedText New(string text) => new(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(SaltBytes)), text);

    /// <summary>The seal of a text.</summary>
    public static string Of(SealedText text) =>
        "sealed:" + Convert.ToHexStringLower(SHA256.HashData([.. Convert.FromHexString(text.Salt), .. Encoding.UTF8.GetBytes(text.Text)]));

    /// <summary>Whether a value is one.</summary>
    public static bool Is(string value) => Form().IsMatch(value);

    [GeneratedRegex("^sealed:[0-9a-f]{64}$")]
    private static partial Regex Form();
}
