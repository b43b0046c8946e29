using System.Collections.Immutable;
using System.Security.Cryptography;
using Microsoft.AspNetCore.DataProtection;
using RebuildApi.Storage;

namespace RebuildApi.Server.Webhooks;

/// <summary>
/// Keeps the secrets of receivers unreadable in the records, and so in backups: what opens them lies in a folder of its own beside the database, for its owner
/// alone. It is made when the first secret is.
/// </summary>
/// <param name="folder">That folder.</param>
public sealed class SecretKeeper(string folder)
{
    /// <summary>Name of the folder within the data folder.</summary>
    public const string Folder = "keys";

    private const string Closed = "protected:";
    private readonly Lazy<IDataProtector> _keys = new(() => Open(folder));

    /// <summary>A secret as the records keep it.</summary>
    public WebhookSecret Close(WebhookSecret secret) => secret with { Secret = Closed + _keys.Value.Protect(secret.Secret) };

    /// <summary>Secrets as the receiver knows them. Those of earlier editions are taken as they stand.</summary>
    /// <exception cref="DeliveryFailedException">The keys that they were closed with are not here.</exception>
    public ImmutableArray<WebhookSecret> Open(ImmutableArray<WebhookSecret> kept) =>
        [.. kept.Select(s => s.Secret.StartsWith(Closed, StringComparison.Ordinal) ? s with { Secret = Opened(s.Secret[Closed.Length..]) } : s)];

    private string Opened(string closed)
    {
        try
        {
            return _keys.Value.Unprotect(closed);
        }
        catch (CryptographicException)
        {
            throw new DeliveryFailedException(null, $"The secret can't be opened: the folder {folder} does not hold the key it was closed with. Replace the secret, or bring the folder back.");
        }
    }

    private static IDataProtector Open(string folder)
    {
        var keys = OperatingSystem.IsWindows()
            ? Directory.CreateDirectory(folder)
            : Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        return DataProtectionProvider.Create(keys, setup => setup.SetApplicationName("RebuildApi")).CreateProtector("webhook-secret");
    }
}
